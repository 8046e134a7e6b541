import { ok } from '../../base/result.ts'
import { type VisitBrief, visitBrief } from '../../brief/visit-brief.ts'
import { asService, type Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Parcel } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import type { Answer } from '../refusal.ts'
import { parcelAsked } from './parcel-asked.ts'

export type VisitBriefRead = { readonly parcel: Parcel; readonly brief: VisitBrief }

/**
 * What to know before going to a parcel: the whole file, with reviewers' corrections in it. Where things were found on
 * the last visit belongs to it too, but to a firm only by a visit of its own.
 */
export const readVisitBrief = (
  context: OperationContext,
  actor: Person,
  asked: string,
): Promise<Answer<VisitBriefRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const parcel = await parcelAsked(tx, actor.county, asked)
    if (!parcel.ok) return parcel
    const { input, findings } = await transact(within, asService(actor), (service) =>
      gatherInput(service, context, actor.county, parcel.value.id),
    )
    const closed = actor.role === 'firm' && findings?.organization !== actor.organization
    return ok({ parcel: parcel.value, brief: visitBrief(closed ? { ...input, findings: null } : input) })
  })
