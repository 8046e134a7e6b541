import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type OwnVisit, ownVisits } from '../../store/own-visits.ts'
import type { OperationContext } from '../context.ts'

/** A firm's own visits in the county: drafts first, then the newest. */
export const listOwnVisits = (
  { database }: Pick<OperationContext, 'database'>,
  actor: Person,
  most: number,
): Promise<readonly OwnVisit[]> =>
  transact(database, actor, (tx) => ownVisits(tx, actor.county, actor.organization, most))
