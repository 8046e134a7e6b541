import { the } from '../../records/naming.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/** An opening that a child can lift is a drowning hazard, whatever the rest of the system does. */
export const lid = check({
  id: 'lid',
  question: 'Is the cover secured?',
  raises: ['condition-poor'],
  subjects: ({ findings }) =>
    (findings?.record.components ?? []).filter(
      ({ outcome, lidSecured }) => outcome === 'found' && lidSecured !== null,
    ),
  about: aboutSeen,
  facet: () => 'cover',
  facts: {
    secured: (found, { findings }) =>
      known(
        found.lidSecured === true,
        seen(
          found,
          findings?.id ?? '',
          `cover of ${found.label}`,
          found.lidSecured ? 'secured' : 'not secured',
          'seen by the inspector',
        ),
      ),
  },
  rules: {},
  decide: ({ secured }, _, found) => ({
    verdict: secured ? 'suffices' : 'falls-short',
    raises: secured ? null : 'condition-poor',
    because: secured
      ? `the cover of ${the(found.label)} is secured`
      : `the cover of ${the(found.label)} is not secured: someone can fall in`,
    certainty: firm('seen by the inspector'),
  }),
})
