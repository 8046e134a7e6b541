import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/** A top that a probe goes through lets a person through. In use or not makes no difference to who stands on it. */
export const top = check({
  id: 'top',
  raises: ['condition-poor'],
  subjects: ({ findings }) =>
    (findings?.record.components ?? []).filter(
      ({ outcome, topGivesWay }) => outcome === 'found' && (topGivesWay ?? null) !== null,
    ),
  about: aboutSeen,
  facet: () => 'top',
  facts: {
    givesWay: (found, given) =>
      known(
        found.topGivesWay === true,
        seen(
          found,
          aboutSeen(found, given),
          given.findings?.id ?? '',
          'top',
          { choice: found.topGivesWay ? 'gives-way' : 'holds' },
          'probe',
        ),
      ),
  },
  rules: {},
  decide: ({ givesWay }) => ({
    verdict: givesWay ? 'falls-short' : 'suffices',
    raises: givesWay ? 'condition-poor' : null,
    reason: { is: 'top', holds: !givesWay },
    certainty: firm('seen'),
  }),
})
