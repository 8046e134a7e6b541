import { ok } from '../../base/result.ts'
import type { System } from '../../records/system.ts'
import { accountNames } from '../../store/accounts.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Parcel } from '../../store/parcels.ts'
import { changesOfSystem, type SystemChange, systemById, systemsOf } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { type Answer, notFound } from '../refusal.ts'

type Context = Pick<OperationContext, 'database'>

/** Those that serve a parcel or lie on it, its own first. */
export const listSystems = (
  context: Context,
  actor: Person,
  asked: string,
): Promise<Answer<readonly System[]>> =>
  transact(context.database, actor, async (tx) => {
    const parcel = await parcelAsked(tx, actor.county, asked)
    if (!parcel.ok) return parcel
    return ok(await systemsOf(tx, actor.county, parcel.value.id))
  })

export type ParcelSystemsRead = {
  readonly parcel: Parcel
  readonly systems: readonly System[]
  /** Every revision of each, newest first. */
  readonly histories: ReadonlyMap<string, readonly SystemChange[]>
  readonly names: ReadonlyMap<string, string>
}

/** The same with how each came to be said, for a reviewer. */
export const readParcelSystems = (
  context: Context,
  actor: Person,
  asked: string,
): Promise<Answer<ParcelSystemsRead>> =>
  transact(context.database, actor, async (tx) => {
    const parcel = await parcelAsked(tx, actor.county, asked)
    if (!parcel.ok) return parcel
    const systems = await systemsOf(tx, actor.county, parcel.value.id)
    const histories = new Map<string, readonly SystemChange[]>()
    for (const { id } of systems) histories.set(id, await changesOfSystem(tx, actor.county, id))
    const accounts = [...histories.values()].flat().map(({ changedBy }) => changedBy)
    return ok({ parcel: parcel.value, systems, histories, names: await accountNames(tx, accounts) })
  })

/** With every revision, which a firm does not see. */
export type SystemRead = { readonly system: System; readonly history: readonly SystemChange[] }

export const readSystem = (context: Context, actor: Person, id: string): Promise<Answer<SystemRead>> =>
  transact(context.database, actor, async (tx) => {
    const system = await systemById(tx, actor.county, id)
    if (!system) return notFound()
    return ok({ system, history: await changesOfSystem(tx, actor.county, id) })
  })
