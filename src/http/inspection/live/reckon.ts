import type { PlainDate } from '../../../base/plain-date.ts'
import type { ReconcileInput } from '../../../reconcile/case.ts'
import { type Reconciliation, reconcile } from '../../../reconcile/reconcile.ts'
import type { FindingsRecord } from '../../../records/findings.ts'

/** All that an inspection is compared with, and in whose name: what the service itself would reconcile it with today. */
export type ReckonWith = Omit<ReconcileInput, 'findings'> & {
  /** The draft's id, or any stand-in while it has none: it only names the inspection in the evidence. */
  readonly findings: string
  readonly firm: string
}

/** The service's own answer to an inspection as it stands, before anything of it is sent. */
export function reckon({ findings: id, firm, ...input }: ReckonWith, record: FindingsRecord): Reconciliation {
  const submittedOn: PlainDate = input.asOf
  return reconcile({ ...input, findings: { id, firm, submittedOn, record } })
}
