import type { Claim } from '../../records/as-built.ts'
import { MEASURE_NAMES } from '../../records/component.ts'
import { the } from '../../records/naming.ts'
import { firm, SYSTEM } from '../about.ts'
import type { Case } from '../case.ts'
import { componentsInService } from '../case.ts'
import { check } from '../check.ts'
import { claimFact, known } from '../fact.ts'
import type { Exhibit, Subject } from '../outcome.ts'

type Doubt = { readonly about: Subject; readonly says: string; readonly exhibits: readonly Exhibit[] }

/** Papers that contradict each other or can't be read: shown as such, never resolved by guess. */
export const recordClarity = check({
  id: 'record-clarity',
  question: 'Does the file speak with one voice, and can it be read?',
  raises: ['record-unclear'],
  subjects: doubts,
  about: ({ about }) => about,
  facet: ({ says }) => says,
  facts: { doubt: (doubt) => known(doubt, ...doubt.exhibits) },
  rules: {},
  decide: ({ doubt }) => ({
    verdict: 'cannot-tell',
    raises: 'record-unclear',
    because: doubt.says,
    certainty: firm('the papers themselves'),
  }),
})

function doubts({ asBuilt, ...rest }: Case): readonly Doubt[] {
  const of = (claim: Claim<unknown>, what: string, about: Subject): Doubt[] => {
    const fact = claimFact(claim, what, print)
    return fact.state === 'doubtful' ? [{ about, says: fact.what, exhibits: fact.exhibits }] : []
  }
  const system = [
    ...of(asBuilt.bedrooms, 'the number of bedrooms', SYSTEM),
    ...of(asBuilt.designFlowGpd, 'the design flow', SYSTEM),
    ...of(asBuilt.percRateMpi, 'the percolation rate', SYSTEM),
  ]
  const parts = componentsInService(asBuilt).flatMap((built) => {
    const about = { key: built.key, label: built.label, kind: built.kind }
    return MEASURE_NAMES.flatMap((name) =>
      of(built.measures[name], `the ${NAMES[name] ?? name} of ${the(built.label)}`, about),
    )
  })
  const clashes = asBuilt.contradictions.map(({ says }): Doubt => ({ about: SYSTEM, says, exhibits: [] }))
  return rest.permits.length === 0 ? [] : [...clashes, ...system, ...parts]
}

const NAMES: { readonly [name: string]: string } = {
  liquidDepth: 'liquid depth',
  insideHeight: 'inside height',
  wallThickness: 'wall thickness',
  effectiveDepth: 'effective depth',
  depthToTop: 'depth to the top',
  pipeDiameter: 'pipe diameter',
  count: 'number',
  tie: 'ties',
}

const print = (value: unknown): string => (typeof value === 'object' ? JSON.stringify(value) : String(value))
