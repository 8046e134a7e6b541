import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Parcel, type ParcelMatch, parcelsAfter, searchParcels } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'

/** Parcels by number in any spelling, old number, or address in part or misspelled; best first. */
export const findParcels = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  query: string,
  most: number,
): Promise<readonly ParcelMatch[]> =>
  transact(context.database, actor, (tx) => searchParcels(tx, query, most))

/** All parcels in the order of their numbers, from after `after`. */
export const listParcels = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  after: string | undefined,
  most: number,
): Promise<readonly Parcel[]> =>
  transact(context.database, actor, (tx) => parcelsAfter(tx, actor.county, after, most))
