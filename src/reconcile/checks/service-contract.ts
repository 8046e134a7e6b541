import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/** A treatment unit works as long as somebody keeps it going: without a contract nobody comes (common practice). */
export const serviceContract = check({
  id: 'service-contract',
  raises: ['contract-lapsed'],
  subjects: ({ findings, former }) =>
    (findings?.record.components ?? []).filter(
      (found) =>
        found.outcome === 'found' &&
        (found.serviceContract ?? null) !== null &&
        !former.some((old) => old.found === found),
    ),
  about: aboutSeen,
  facts: {
    contract: (found, given) =>
      known(
        found.serviceContract!,
        seen(found, aboutSeen(found, given), given.findings?.id ?? '', 'contract', {
          choice: found.serviceContract!,
        }),
      ),
  },
  rules: {},
  decide: ({ contract }) => ({
    verdict: contract === 'in-force' ? 'suffices' : 'falls-short',
    raises: contract === 'in-force' ? null : 'contract-lapsed',
    reason: { is: 'contract', contract },
    certainty: firm('seen'),
  }),
})
