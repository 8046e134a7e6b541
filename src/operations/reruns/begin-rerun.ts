import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { gatherWholeCounty, insertRerun, type RerunCause } from '../../store/reruns.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'
import { type RerunRead, readRerun } from './read-rerun.ts'

/** How many jobs share a re-run: more than processes that work side by side find a use for does no harm. */
const SHARES = 8

/** Leaves every parcel of the county that has something on file to be reconciled again. */
export const beginRerun = (
  context: OperationContext,
  actor: Person,
  cause: RerunCause,
): Promise<Answer<RerunRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const { county, account: by } = actor
    const id = context.newId()
    await insertRerun(tx, county, { id, cause, state: 'running', askedAt: context.clock(), by })
    await gatherWholeCounty(tx, county, id)
    await leaveShares(context, tx, actor, id)
    const read = await readRerun({ database: within }, actor, id)
    return read.ok ? ok(read.value) : notFound()
  })

/** Leaves the jobs that work a re-run off. More of them than are needed end at once. */
export async function leaveShares(
  { jobs }: Pick<OperationContext, 'jobs'>,
  tx: Tx,
  actor: Parameters<OperationContext['jobs']['enqueue']>[1],
  rerun: string,
): Promise<void> {
  for (let share = 0; share < SHARES; share++) await jobs.enqueue(tx, actor, 'share-rerun', { rerun })
}
