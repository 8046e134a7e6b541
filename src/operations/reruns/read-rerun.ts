import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import {
  type Rerun,
  type RerunCounts,
  type RerunLine,
  type RerunOutcome,
  rerunById,
  rerunCounts,
  rerunParcels,
  rerunsBefore,
} from '../../store/reruns.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

export type RerunRead = { readonly rerun: Rerun; readonly counts: RerunCounts }

type Context = Pick<OperationContext, 'database'>

/** How far a re-run is. */
export const readRerun = (context: Context, actor: Person, id: string): Promise<Answer<RerunRead>> =>
  transact(context.database, actor, async (tx) => {
    const rerun = await rerunById(tx, actor.county, id)
    return rerun ? ok({ rerun, counts: await rerunCounts(tx, actor.county, id) }) : notFound()
  })

/** Newest first. */
export const listReruns = (
  context: Context,
  actor: Person,
  before: string | undefined,
  most: number,
): Promise<readonly Rerun[]> =>
  transact(context.database, actor, (tx) => rerunsBefore(tx, actor.county, before, most))

export const listRerunParcels = (
  context: Context,
  actor: Person,
  id: string,
  asked: { readonly outcome: RerunOutcome; readonly after: string | undefined; readonly most: number },
): Promise<Answer<readonly RerunLine[]>> =>
  transact(context.database, actor, async (tx) => {
    const rerun = await rerunById(tx, actor.county, id)
    if (!rerun) return notFound()
    return ok(await rerunParcels(tx, actor.county, id, asked.outcome, asked.after, asked.most))
  })
