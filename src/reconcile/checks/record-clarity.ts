import { MEASURE_NAMES, type MeasureName } from '../../catalog/catalog.ts'
import type { AsBuilt, Claim, Contradiction } from '../../records/as-built.ts'
import { type Part, partOnRecord, SYSTEM } from '../../records/part.ts'
import { firm } from '../about.ts'
import { type Case, componentsInService } from '../case.ts'
import { check } from '../check.ts'
import { claimFact, known } from '../fact.ts'
import { borneOut } from '../facts/borne-out.ts'
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

function doubts(given: Case): readonly Question[] {
  const { asBuilt, permits } = given
  if (permits.length === 0) return []
  const parts = ofParts(given)
  const twice = asBuilt.contradictions.filter(({ gap }) => gap === 'put-in-twice').map(({ part }) => part.key)
  return [
    ...asBuilt.contradictions.map((doubt) => clash(doubt, parts)),
    ...ofSystem(asBuilt),
    ...parts.filter(({ about, doubt }) => !(doubt.gap === 'contradictory' && twice.includes(about.key))),
  ]
}

/** Two permits for one thing are one question, with all that they contradict each other on. */
const clash = (doubt: Contradiction, parts: readonly Question[]): Question => ({
  about: doubt.gap === 'put-in-twice' ? doubt.part : SYSTEM,
  facet: [
    doubt.gap,
    doubt.part.label,
    ...('permit' in doubt ? [doubt.permit] : doubt.permits.map(({ number }) => number)),
  ].join(' / '),
  ...asDoubt(doubt, parts),
})

function asDoubt(it: Contradiction, parts: readonly Question[]): Pick<Question, 'doubt' | 'exhibits'> {
  const { permits, ...doubt } = it
  if ('permit' in doubt) return { doubt, exhibits: [] }
  const numbers = permits.map(({ number }) => number)
  if (doubt.gap !== 'put-in-twice')
    return { doubt: { gap: doubt.gap, part: doubt.part, permits: numbers }, exhibits: [] }
  const own = parts.filter(({ about }) => about.key === doubt.part.key)
  const on = own.flatMap((part) => (part.doubt.gap === 'contradictory' ? [part.doubt] : []))
  return {
    doubt: { ...doubt, permits: numbers, ...(on.length === 0 ? {} : { on }) },
    exhibits: own.flatMap(({ doubt: { gap }, exhibits }) => (gap === 'contradictory' ? exhibits : [])),
  }
}

const ofSystem = (asBuilt: AsBuilt): readonly Question[] =>
  (['bedrooms', 'designFlowGpd', 'percRateMpi'] as const).flatMap((name) =>
    of<number>(asBuilt[name], name, SYSTEM, (value) => showSystemField(name, value)),
  )

const ofParts = (given: Case): readonly Question[] =>
  componentsInService(given.asBuilt).flatMap((built) =>
    MEASURE_NAMES.flatMap((name: MeasureName) =>
      of<unknown>(built.measures[name], name, partOnRecord(built), (value) => showMeasure(name, value)).map(
        (it) => (name === 'capacity' ? decided(it, built.key, given) : it),
      ),
    ),
  )

/** A measurement that bears out one of the permits decides between them; what the file says is still to be fixed. */
function decided(question: Question, key: string, given: Case): Question {
  const pairing = given.pairings.find(({ built }) => built.key === key)
  const out = pairing ? borneOut(pairing, given) : null
  if (!out || question.doubt.gap !== 'contradictory') return question
  const borne = { found: out.found, permit: out.origin.permit.number }
  return { ...question, doubt: { ...question.doubt, borneOut: borne } }
}

function of<T>(claim: Claim<T>, thing: Thing, about: Part, show: (value: T) => Shown): readonly Question[] {
  const fact = claimFact(claim, thing, about, show)
  return fact.state === 'doubtful' ? [{ about, facet: thing, doubt: fact.gap, exhibits: fact.exhibits }] : []
}
