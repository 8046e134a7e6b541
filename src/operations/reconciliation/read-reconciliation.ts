import { ok } from '../../base/result.ts'
import type { Reconciliation } from '../../reconcile/reconcile.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type ChangeNoticed, changesBy } from '../../store/discrepancy-changes.ts'
import { type Parcel, parcelById } from '../../store/parcels.ts'
import {
  newestReconciliation,
  type ReconciliationInList,
  type ReconciliationKey,
  reconciliationById,
  reconciliationsOf,
  type StoredReconciliation,
} from '../../store/reconciliations.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'
import { systemAsked } from '../systems/system-asked.ts'
import { fullAnswerFor } from './full-answer.ts'

export type ReconciliationRead = {
  readonly parcel: Parcel
  readonly reconciliation: StoredReconciliation
  /** The answer with its as-built and its working. */
  readonly result: Reconciliation
  /** What it changed against the one before it. */
  readonly changes: readonly ChangeNoticed[]
}

type Context = Pick<OperationContext, 'database'>

/** One as it was made: a reviewer's any, a firm's those of its own findings. */
export const readReconciliation = (
  context: Context,
  actor: Person,
  id: string,
): Promise<Answer<ReconciliationRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const reconciliation = await reconciliationById(tx, actor.county, id)
    const parcel = reconciliation && (await parcelById(tx, actor.county, reconciliation.parcel))
    if (!parcel) return notFound()
    return ok({
      parcel,
      reconciliation,
      result: await fullAnswerFor(within, actor, reconciliation),
      changes: await changesBy(tx, actor.county, id),
    })
  })

/** The newest of a system that the asker may see. */
export const readNewestReconciliation = (
  context: Context,
  actor: Person,
  asked: string,
  system?: string,
): Promise<Answer<ReconciliationRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const found = await systemAsked(tx, actor.county, asked, system)
    if (!found.ok) return found
    const reconciliation = await newestReconciliation(tx, actor.county, found.value.system.id)
    if (!reconciliation) return notFound('Nothing was reconciled on this parcel yet that you may see.')
    const changes = await changesBy(tx, actor.county, reconciliation.id)
    const result = await fullAnswerFor(within, actor, reconciliation)
    return ok({ parcel: found.value.parcel, reconciliation, result, changes })
  })

/** All of a system's, newest first, from before `before`. */
export const listReconciliations = (
  context: Context,
  actor: Person,
  asked: string,
  before: ReconciliationKey | undefined,
  most: number,
  system?: string,
): Promise<Answer<readonly ReconciliationInList[]>> =>
  transact(context.database, actor, async (tx) => {
    const found = await systemAsked(tx, actor.county, asked, system)
    if (!found.ok) return found
    return ok(await reconciliationsOf(tx, actor.county, found.value.system.id, before, most))
  })
