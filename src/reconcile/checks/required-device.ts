import type { SearchMethod } from '../../catalog/choices.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import { aboutSeen, firm, likely, seen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/** What every septic tank needs to work, whether or not its card lists it (common practice). */
const EVERY_TANK: readonly ComponentKind[] = ['inlet-baffle', 'outlet-baffle']

const CONCLUSIVE: readonly SearchMethod[] = ['excavation', 'camera', 'seen-through-opening']

/** A baffle that was looked for and is not there is gone, listed on the card or not. Most old cards list none. */
export const requiredDevice = check({
  id: 'required-device',
  raises: ['component-missing'],
  subjects: ({ unrecorded }) =>
    unrecorded.filter(({ kind, outcome }) => outcome === 'not-found' && EVERY_TANK.includes(kind)),
  about: aboutSeen,
  facts: {
    search: (found, given) =>
      known(
        found,
        seen(
          found,
          aboutSeen(found, given),
          given.findings?.id ?? '',
          'presence',
          { choice: 'not-found' },
          found.searchedBy[0] ?? 'seen',
        ),
      ),
  },
  rules: {},
  decide: ({ search: { searchedBy: by, searchedWithin } }) => ({
    verdict: 'differs',
    raises: 'component-missing',
    reason: { is: 'searched', by, within: searchedWithin?.asWritten ?? null },
    certainty: by.some((method) => CONCLUSIVE.includes(method)) ? firm('opened') : likely('surface-search'),
  }),
})
