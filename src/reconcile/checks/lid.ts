import type { FoundComponent } from '../../records/findings.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

const coverOf = (id: string, isAsked: (found: FoundComponent, given: Case) => boolean) =>
  check({
    id,
    raises: ['condition-poor'],
    subjects: (given: Case) =>
      (given.findings?.record.components ?? []).filter(
        (found) =>
          found.outcome === 'found' &&
          ((found.lidSecured ?? null) !== null || found.coverMissing === true) &&
          isAsked(found, given),
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
    decide: ({ secured }, _, found, given) => ({
      verdict: secured ? 'suffices' : 'falls-short',
      raises: secured ? null : 'condition-poor',
      reason: {
        is: 'cover',
        secured,
        ...(!secured && found.coverMissing ? { missing: true as const } : {}),
        ...(!secured && isOutOfUse(found, given) ? { outOfUse: true as const } : {}),
      },
      certainty: firm('seen'),
    }),
  })

const isOutOfUse = (found: FoundComponent, { former }: Case): boolean =>
  former.some((old) => old.found === found)

/** An opening that a child can lift, or that stands open, is a drowning hazard, whatever the rest of the system does. */
export const lid = coverOf('lid', (found, given) => !isOutOfUse(found, given))

/** What the record has out of service and was left open, or can be opened, was never abandoned as it has to be. */
export const leftOpen = coverOf('left-open', isOutOfUse)
