import type { z } from 'zod'
import { plainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import { findingsEntry } from '../../src/reading/entry/findings.ts'
import type { permitEntry } from '../../src/reading/entry/permit.ts'
import type { ReconcileInput } from '../../src/reconcile/case.ts'
import type { Outcome } from '../../src/reconcile/outcome.ts'
import { type Reconciliation, reconcile } from '../../src/reconcile/reconcile.ts'
import { filed } from '../records/permits.ts'

export const book = must(await loadRuleBook())
export const day = (text: string) => must(plainDate(text))

type Permit = z.input<typeof permitEntry>
type Findings = z.input<typeof findingsEntry>
type FoundEntry = NonNullable<Findings['components']>[number]

/** A permit of 1988 in Quillback County with these parts, unless told otherwise. */
export const permit = (components: Permit['components'], more: Partial<Permit> = {}): Permit => ({
  number: '88-1',
  kind: 'new',
  issuedOn: '1988-03-01',
  approvedOn: '1988-05-01',
  bedrooms: 3,
  components,
  ...more,
})

/** Input from what people type: each permit's id is its number, so keys read `88-1/tank 1`. */
export function inputOf(permits: readonly Permit[], findings: Partial<Findings> | null): ReconcileInput {
  return {
    county: 'quillback',
    asOf: day('2026-06-01'),
    corrections: [],
    permits: permits.map((entry) => filed(entry.number, entry)),
    findings:
      findings === null
        ? null
        : {
            id: 'inspection-1',
            firm: 'Marsh Road Septic Inspections',
            submittedOn: day('2026-05-20'),
            record: findingsEntry.parse({ inspectedOn: '2026-05-19', ...findings }),
          },
    book,
  }
}

export const asked = (
  permits: readonly Permit[],
  components: readonly FoundEntry[],
  more: Partial<Findings> = {},
): Reconciliation => reconcile(inputOf(permits, { components: [...components], ...more }))

export const outcomesOf = (answer: Reconciliation, check: string): readonly Outcome[] =>
  answer.outcomes.filter((outcome) => outcome.check === check)

/** What differs. What an inspection left out has tests of its own: cases here say only what they are about. */
export const kindsOf = (answer: Reconciliation): readonly string[] =>
  answer.discrepancies
    .map(({ kind }) => kind)
    .filter((kind) => kind !== 'inspection-incomplete')
    .sort()
