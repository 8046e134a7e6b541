import { ok } from '../../base/result.ts'
import { type InspectionBrief, inspectionBrief } from '../../brief/inspection-brief.ts'
import { asService, type Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Parcel } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import type { Answer } from '../refusal.ts'
import { systemAsked } from '../systems/system-asked.ts'

export type InspectionBriefRead = { readonly parcel: Parcel; readonly brief: InspectionBrief }

/**
 * What to know before going to a parcel: the whole file, with reviewers' corrections in it. Where things were found on
 * the last inspection belongs to it too, but to a firm only by an inspection of its own.
 */
export const readInspectionBrief = (
  context: OperationContext,
  actor: Person,
  asked: string,
  askedSystem?: string,
): Promise<Answer<InspectionBriefRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const found = await systemAsked(tx, actor.county, asked, askedSystem)
    if (!found.ok) return found
    const { parcel, system } = found.value
    const { input, findings } = await transact(within, asService(actor), (service) =>
      gatherInput(service, context, actor.county, system),
    )
    const closed = actor.role === 'firm' && findings?.organization !== actor.organization
    return ok({ parcel, brief: inspectionBrief(closed ? { ...input, findings: null } : input) })
  })
