import type { ComponentKind } from '../../catalog/kinds.ts'
import type { AsBuiltComponent } from '../../records/as-built.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/** A tank comes with its baffles and openings; a record that does not list them is not contradicted by them. */
const GOES_WITHOUT_SAYING: readonly ComponentKind[] = [
  'inlet-baffle',
  'outlet-baffle',
  'access-opening',
  'riser',
  'observation-port',
]

/** Old cards do not list the lines: every house has one of each. Where the card does, a second one is told. */
const ONE_OF_EACH: readonly ComponentKind[] = ['building-sewer', 'effluent-line']
const isTheOne = (found: FoundComponent, { asBuilt, unrecorded }: Case): boolean =>
  ONE_OF_EACH.includes(found.kind) &&
  !asBuilt.components.some(({ kind }) => kind === found.kind) &&
  unrecorded.find(({ kind, outcome }) => kind === found.kind && outcome === 'found') === found

type Question = { readonly found: FoundComponent; readonly built: AsBuiltComponent | null }

/** Anything found that answers to nothing in service on record; what a paper took out of service may well be there still. */
export const componentOnRecord = check({
  id: 'component-on-record',
  raises: ['component-not-on-record'],
  subjects: (given): readonly Question[] =>
    [...given.former, ...given.unrecorded.map((found) => ({ found, built: null }))].filter(
      ({ found }) =>
        found.outcome === 'found' && !GOES_WITHOUT_SAYING.includes(found.kind) && !isTheOne(found, given),
    ),
  about: ({ found }, given) => aboutSeen(found, given),
  facts: {
    found: ({ found }, given) =>
      known(
        found,
        seen(
          found,
          aboutSeen(found, given),
          given.findings?.id ?? '',
          'presence',
          { choice: 'found' },
          'seen',
          found.note,
        ),
      ),
  },
  rules: {},
  decide({ found }, _, { built }, { asBuilt }) {
    if (built) {
      return {
        verdict: 'agrees',
        raises: null,
        reason: { is: 'still-there', ...outOfService(built) },
        certainty: firm('seen'),
      }
    }
    const alike = asBuilt.components.find(
      ({ kind, standing }) => standing !== 'in-service' && kind === found.kind && found.key === null,
    )
    return {
      verdict: 'differs',
      raises: 'component-not-on-record',
      reason: {
        is: 'not-on-record',
        formerly: alike ? { part: partOnRecord(alike), ...outOfService(alike) } : null,
      },
      certainty: firm('seen'),
    }
  },
})

const outOfService = ({ standing, events }: AsBuiltComponent) => ({
  standing: standing === 'abandoned' ? standing : ('replaced' as const),
  permit: events.findLast(({ what }) => what === standing)?.permit.number ?? null,
})
