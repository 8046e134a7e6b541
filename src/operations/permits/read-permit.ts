import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type FilingChange, filingChangesOf, mergedInto } from '../../store/filing-changes.ts'
import { type PermitOnFile, type PermitRevision, permitById, revisionsOf } from '../../store/permits.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

export type PermitRead = {
  readonly permit: PermitOnFile
  readonly revisions: readonly PermitRevision[]
  /** How it came to be filed as it is, oldest first. */
  readonly filingChanges: readonly FilingChange[]
  /** The permits that were merged into it. */
  readonly holds: readonly string[]
}

/** A permit as it stands, with every revision it went through and every change of how it is filed. */
export const readPermit = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string,
): Promise<Answer<PermitRead>> =>
  transact(context.database, actor, async (tx) => {
    const permit = await permitById(tx, actor.county, id)
    if (!permit) return notFound()
    return ok({
      permit,
      revisions: await revisionsOf(tx, actor.county, id),
      filingChanges: await filingChangesOf(tx, actor.county, id),
      holds: await mergedInto(tx, actor.county, id),
    })
  })
