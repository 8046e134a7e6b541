import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type PermitOnFile, type PermitRevision, permitById, revisionsOf } from '../../store/permits.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

export type PermitRead = { readonly permit: PermitOnFile; readonly revisions: readonly PermitRevision[] }

/** A permit as it stands, with every revision it went through. */
export const readPermit = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string,
): Promise<Answer<PermitRead>> =>
  transact(context.database, actor, async (tx) => {
    const permit = await permitById(tx, actor.county, id)
    if (!permit) return notFound()
    return ok({ permit, revisions: await revisionsOf(tx, actor.county, id) })
  })
