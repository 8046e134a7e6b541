import { invariant } from '../../base/invariant.ts'
import { dayOf, type PlainDate } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { reconcile } from '../../reconcile/reconcile.ts'
import { statusOf } from '../../reconcile/status.ts'
import { type Actor, asService, type Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Parcel } from '../../store/parcels.ts'
import { type DatedStatus, type DerivedStatus, derivedStatus, statusOfNumber } from '../../store/statuses.ts'
import { systemsOf } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import { reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import type { Answer } from '../refusal.ts'
import { parcelAsked } from './parcel-asked.ts'

export type StatusRead = { readonly parcel: Parcel; readonly status: DatedStatus }

/**
 * A parcel's one word, its sentence and what is outstanding, as of today. Nearly always it is derived already and asked
 * for by the county's own number, which is one question; whatever else is asked takes the long way.
 */
export async function readStatus(
  context: OperationContext,
  actor: Person,
  asked: string,
): Promise<Answer<StatusRead>> {
  const today = dayOf(context.clock())
  const known = await statusOfNumber(context.database, actor.county, asked)
  if (known && holds(known.derived, today)) {
    return ok({ parcel: known.parcel, status: { ...known.derived.status, asOf: today } })
  }
  return transact(context.database, actor, async (tx, within) => {
    const parcel = await parcelAsked(tx, actor.county, asked)
    if (!parcel.ok) return parcel
    const status = await statusToday({ ...context, database: within }, actor, parcel.value.id)
    return ok({ parcel: parcel.value, status })
  })
}

const holds = ({ goodUntil }: DerivedStatus, today: PlainDate): boolean =>
  goodUntil === null || goodUntil >= today

/**
 * The status as derived, while it is good; once time alone may have changed it the parcel is reconciled again. A parcel
 * with nothing in its file and no inspection is answered without being written down: a county has many of those.
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
  if (derived && holds(derived, today)) {
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
    const [system, ...others] = await systemsOf(tx, actor.county, parcel)
    invariant(system, `a parcel without any system: ${parcel}`)
    const { input } = await gatherInput(tx, context, actor.county, system)
    if (others.length > 0 || input.system || input.permits.length > 0 || input.findings) {
      return (await reconcileParcel({ ...context, database: within }, actor, parcel, 'time-passed')).status
    }
    const standing = reconcile(input).discrepancies.map((discrepancy) => ({
      id: discrepancy.key,
      discrepancy,
      decided: null,
    }))
    const status = statusOf({
      hasApprovedPermit: false,
      hasInspection: false,
      standing,
      decidedBefore: false,
    })
    return { ...status, asOf: today }
  })
