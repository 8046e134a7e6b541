import type { PlainDate } from '../../base/plain-date.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import type { RuleBook } from '../../rules/book.ts'
import { asCorrection } from '../../store/decisions.ts'
import { asSubmitted } from '../../store/findings.ts'
import type { ManyOnFile } from '../../store/many-parcels.ts'

/** The input of one of many parcels that were read at once: the same that `gatherInput` gathers for it alone. */
export function inputAmong(
  onFile: ManyOnFile,
  parcel: string,
  { place, asOf, book }: { readonly place: string; readonly asOf: PlainDate; readonly book: RuleBook },
): ReconcileInput {
  const findings = onFile.findings.get(parcel)
  return {
    county: place,
    asOf,
    permits: (onFile.permits.get(parcel) ?? []).map(({ id, revision, record, sources }) => ({
      id,
      revision,
      record,
      sources,
    })),
    corrections: (onFile.decisions.get(parcel) ?? []).flatMap((decision) => asCorrection(decision) ?? []),
    findings: findings ? asSubmitted(findings) : null,
    book,
  }
}
