import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/**
 * An opening that a child can lift, or that stands open, is a drowning hazard, whatever the rest of the system does. One
 * that the record has out of service and that was left open was never abandoned as it has to be.
 */
export const lid = check({
  id: 'lid',
  raises: ['condition-poor'],
  subjects: ({ findings }) =>
    (findings?.record.components ?? []).filter(
      ({ outcome, lidSecured, coverMissing }) =>
        outcome === 'found' && ((lidSecured ?? null) !== null || coverMissing === true),
    ),
  about: aboutSeen,
  facet: () => 'cover',
  facts: {
    secured: (found, given) => {
      const secured = found.lidSecured === true && found.coverMissing !== true
      const choice = secured ? 'secured' : found.coverMissing ? 'open' : 'not-secured'
      return known(
        secured,
        seen(found, aboutSeen(found, given), given.findings?.id ?? '', 'cover', { choice }),
      )
    },
  },
  rules: {},
  decide: ({ secured }, _, found, { former }) => ({
    verdict: secured ? 'suffices' : 'falls-short',
    raises: secured ? null : 'condition-poor',
    reason: {
      is: 'cover',
      secured,
      ...(!secured && found.coverMissing ? { missing: true as const } : {}),
      ...(!secured && former.some((old) => old.found === found) ? { outOfUse: true as const } : {}),
    },
    certainty: firm('seen'),
  }),
})
