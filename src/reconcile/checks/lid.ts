import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/** An opening that a child can lift is a drowning hazard, whatever the rest of the system does. */
export const lid = check({
  id: 'lid',
  raises: ['condition-poor'],
  subjects: ({ findings }) =>
    (findings?.record.components ?? []).filter(
      ({ outcome, lidSecured }) => outcome === 'found' && lidSecured !== null,
    ),
  about: aboutSeen,
  facet: () => 'cover',
  facts: {
    secured: (found, given) =>
      known(
        found.lidSecured === true,
        seen(found, aboutSeen(found, given), given.findings?.id ?? '', 'cover', {
          choice: found.lidSecured ? 'secured' : 'not-secured',
        }),
      ),
  },
  rules: {},
  decide: ({ secured }) => ({
    verdict: secured ? 'suffices' : 'falls-short',
    raises: secured ? null : 'condition-poor',
    reason: { is: 'cover', secured },
    certainty: firm('seen'),
  }),
})
