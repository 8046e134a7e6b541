import type { FindingsRecord } from '../../records/findings.ts'
import { SYSTEM } from '../../records/part.ts'
import { firm } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'
import { OTHER_SYSTEMS, type OtherSystem } from '../other-systems.ts'

/**
 * What an inspection finds of systems beside this one: a second one on the lot, another lot that this one serves or lies
 * on. Each that was seen is asked. That it was not seen is no evidence, and asks nothing.
 */
export const otherSystems = check({
  id: 'other-systems',
  raises: ['system-not-on-record'],
  subjects: ({ findings }: Case): readonly OtherSystem[] =>
    findings ? OTHER_SYSTEMS.filter((it) => SEEN[it](findings.record) === true) : [],
  about: () => SYSTEM,
  facet: (found) => found,
  facts: { onRecord: (found, given) => known(ON_RECORD[found](given)) },
  rules: {},
  decide: ({ onRecord }, _, found) => ({
    verdict: onRecord ? 'agrees' : 'differs',
    raises: onRecord ? null : 'system-not-on-record',
    reason: { is: 'other-system', found, onRecord },
    certainty: firm('seen'),
  }),
})

const SEEN: { readonly [F in OtherSystem]: (record: FindingsRecord) => boolean | null | undefined } = {
  'second-system': ({ secondSystem }) => secondSystem,
  'serves-another-lot': ({ servesAnotherLot }) => servesAnotherLot,
  'lies-on-another-lot': ({ liesOnAnotherLot }) => liesOnAnotherLot,
}

const isShared = ({ system }: Case): boolean => (system?.serves.length ?? 1) > 1

const ON_RECORD: { readonly [F in OtherSystem]: (given: Case) => boolean } = {
  'second-system': ({ system }) => system?.oneOfSeveral ?? false,
  'serves-another-lot': isShared,
  'lies-on-another-lot': (given) => isShared(given) || (given.system?.liesElsewhere ?? false),
}
