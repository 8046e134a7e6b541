import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type OwnInspection, ownInspections } from '../../store/own-inspections.ts'
import type { OperationContext } from '../context.ts'

/** A firm's own inspections in the county: drafts first, then the newest. */
export const listOwnInspections = (
  { database }: Pick<OperationContext, 'database'>,
  actor: Person,
  most: number,
): Promise<readonly OwnInspection[]> =>
  transact(database, actor, (tx) => ownInspections(tx, actor.county, actor.organization, most))
