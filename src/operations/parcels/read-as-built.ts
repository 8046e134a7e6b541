import { dayOf, type PlainDate } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { AsBuilt } from '../../records/as-built.ts'
import { asBuiltOn } from '../../records/fold.ts'
import type { System } from '../../records/system.ts'
import { asService, type Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Parcel } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import type { Answer } from '../refusal.ts'
import { systemAsked } from '../systems/system-asked.ts'

export type AsBuiltRead = { readonly parcel: Parcel; readonly asBuilt: AsBuilt }

/** What should be in the ground on a day, today where none is given, with where each value comes from. */
export const readAsBuilt = (
  context: OperationContext,
  actor: Person,
  asked: string,
  on: PlainDate | undefined,
  askedSystem?: string,
): Promise<Answer<AsBuiltRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const found = await systemAsked(tx, actor.county, asked, askedSystem)
    if (!found.ok) return found
    const { parcel, system } = found.value
    return ok({ parcel, asBuilt: await asBuiltNow({ ...context, database: within }, actor, system, on) })
  })

/**
 * In the service's name: a firm sees the as-built with reviewers' corrections in it, though not the discrepancies of
 * other firms' findings that led to them.
 */
export const asBuiltNow = (
  context: OperationContext,
  actor: Person,
  system: System,
  on: PlainDate | undefined,
): Promise<AsBuilt> =>
  transact(context.database, asService(actor), async (tx) => {
    const { input } = await gatherInput(tx, context, actor.county, system)
    return asBuiltOn(input.permits, input.corrections, on ?? dayOf(context.clock()), input.system?.serves)
  })
