import { dayOf, type PlainDate } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { reconcile } from '../../reconcile/reconcile.ts'
import { statusOf } from '../../reconcile/status.ts'
import { type Actor, asService, type Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Parcel } from '../../store/parcels.ts'
import { type DatedStatus, derivedStatus } from '../../store/statuses.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import { reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import type { Answer } from '../refusal.ts'
import { parcelAsked } from './parcel-asked.ts'

export type StatusRead = { readonly parcel: Parcel; readonly status: DatedStatus }

/** A parcel's one word, its sentence and what is outstanding, as of today. */
export const readStatus = (
  context: OperationContext,
  actor: Person,
  asked: string,
): Promise<Answer<StatusRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const parcel = await parcelAsked(tx, actor.county, asked)
    if (!parcel.ok) return parcel
    const status = await statusToday({ ...context, database: within }, actor, parcel.value.id)
    return ok({ parcel: parcel.value, status })
  })

/**
 * The status as derived, while it is good; once time alone may have changed it the parcel is reconciled again. A parcel
 * with nothing in its file and no visit is answered without being written down: a county has many of those.
 */
export async function statusToday(
  context: OperationContext,
  actor: Actor,
  parcel: string,
): Promise<DatedStatus> {
  const today = dayOf(context.clock())
  const derived = await transact(context.database, asService(actor), (tx) =>
    derivedStatus(tx, actor.county, parcel),
  )
  if (derived && (derived.goodUntil === null || derived.goodUntil >= today)) {
    return { ...derived.status, asOf: today }
  }
  if (derived) return (await reconcileParcel(context, actor, parcel, 'time-passed')).status
  return statusUnwritten(context, actor, parcel, today)
}

const statusUnwritten = (
  context: OperationContext,
  actor: Actor,
  parcel: string,
  today: PlainDate,
): Promise<DatedStatus> =>
  transact(context.database, asService(actor), async (tx, within) => {
    const { input } = await gatherInput(tx, context, actor.county, parcel)
    if (input.permits.length > 0 || input.findings) {
      return (await reconcileParcel({ ...context, database: within }, actor, parcel, 'time-passed')).status
    }
    const discrepancies = reconcile(input).discrepancies.map(({ kind, severity, sentences, next }) => ({
      kind,
      severity,
      says: sentences.agent,
      next,
      decided: null,
    }))
    const status = statusOf({
      hasApprovedPermit: false,
      hasVisit: false,
      discrepancies,
      decidedBefore: false,
    })
    return { ...status, asOf: today }
  })
