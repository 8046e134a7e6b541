import type { AsBuilt, Claim, Contradiction } from '../../records/as-built.ts'
import { MEASURE_NAMES, type MeasureName } from '../../records/component.ts'
import { type Part, partOnRecord, SYSTEM } from '../../records/part.ts'
import { firm } from '../about.ts'
import type { Case } from '../case.ts'
import { componentsInService } from '../case.ts'
import { check } from '../check.ts'
import { claimFact, known } from '../fact.ts'
import type { Exhibit } from '../outcome.ts'
import type { Doubt } from '../reason.ts'
import { showMeasure, showSystemField } from '../show.ts'
import type { Shown, Thing } from '../thing.ts'

type Question = {
  readonly about: Part
  /** Which of several doubts about one part. */
  readonly facet: string
  readonly doubt: Doubt
  readonly exhibits: readonly Exhibit[]
}

/** Papers that contradict each other or can't be read: shown as such, never resolved by guess. */
export const recordClarity = check({
  id: 'record-clarity',
  raises: ['record-unclear'],
  subjects: doubts,
  about: ({ about }) => about,
  facet: ({ facet }) => facet,
  facts: { doubt: ({ doubt, exhibits }) => known(doubt, ...exhibits) },
  rules: {},
  decide: ({ doubt }) => ({
    verdict: 'cannot-tell',
    raises: 'record-unclear',
    reason: { is: 'unclear', doubt },
    certainty: firm('the-papers'),
  }),
})

function doubts({ asBuilt, permits }: Case): readonly Question[] {
  if (permits.length === 0) return []
  return [...asBuilt.contradictions.map(clash), ...ofSystem(asBuilt), ...ofParts(asBuilt)]
}

const clash = (doubt: Contradiction): Question => ({
  about: SYSTEM,
  facet: [
    doubt.gap,
    doubt.part.label,
    ...('permit' in doubt ? [doubt.permit] : doubt.permits.map(({ number }) => number)),
  ].join(' / '),
  doubt: asDoubt(doubt),
  exhibits: [],
})

const asDoubt = (it: Contradiction): Doubt => {
  const { permits, ...doubt } = it
  return doubt.gap === 'put-in-twice' ? { ...doubt, permits: permits.map(({ number }) => number) } : doubt
}

const ofSystem = (asBuilt: AsBuilt): readonly Question[] =>
  (['bedrooms', 'designFlowGpd', 'percRateMpi'] as const).flatMap((name) =>
    of<number>(asBuilt[name], name, SYSTEM, (value) => showSystemField(name, value)),
  )

const ofParts = (asBuilt: AsBuilt): readonly Question[] =>
  componentsInService(asBuilt).flatMap((built) =>
    MEASURE_NAMES.flatMap((name: MeasureName) =>
      of<unknown>(built.measures[name], name, partOnRecord(built), (value) => showMeasure(name, value)),
    ),
  )

function of<T>(claim: Claim<T>, thing: Thing, about: Part, show: (value: T) => Shown): readonly Question[] {
  const fact = claimFact(claim, thing, about, show)
  return fact.state === 'doubtful' ? [{ about, facet: thing, doubt: fact.gap, exhibits: fact.exhibits }] : []
}
