import { ok } from '../../../base/result.ts'
import type { OperationContext } from '../../../operations/context.ts'
import { amendFindings } from '../../../operations/findings/amend-findings.ts'
import { beginInspection } from '../../../operations/findings/begin-inspection.ts'
import { changeFindings } from '../../../operations/findings/change-findings.ts'
import type { InspectionPrepared } from '../../../operations/findings/prepare-inspection.ts'
import type { Answer } from '../../../operations/refusal.ts'
import type { FindingsRecord } from '../../../records/findings.ts'
import type { Person } from '../../../store/database/actor.ts'
import type { Findings } from '../../../store/findings.ts'

/** Saves an inspection as a draft; what is saved already is not saved again. */
export async function save(
  context: OperationContext,
  actor: Person,
  { parcel, system, draft }: InspectionPrepared,
  record: FindingsRecord,
): Promise<Answer<Findings>> {
  if (!draft) return beginInspection(context, actor, parcel.id, record, system.id)
  if (same(draft.record, record)) return ok(draft)
  return changeFindings(context, actor, { id: draft.id, version: draft.revision, record })
}

/** An amendment begins as what was submitted says. */
export const amend = (
  context: OperationContext,
  actor: Person,
  submitted: Findings,
): Promise<Answer<Findings>> => amendFindings(context, actor, submitted.id, submitted.record)

/** Key by key: the database gives keys back in an order of its own. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b
  const [x, y] = [a as Record<string, unknown>, b as Record<string, unknown>]
  return [...new Set([...Object.keys(x), ...Object.keys(y)])].every((key) => same(x[key], y[key]))
}
