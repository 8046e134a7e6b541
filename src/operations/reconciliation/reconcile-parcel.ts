import { reconcile } from '../../reconcile/reconcile.ts'
import { type Actor, asService } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { ChangeNoticed } from '../../store/discrepancy-changes.ts'
import { recordEvent } from '../../store/events.ts'
import { hashOf } from '../../store/hash.ts'
import { lockParcel } from '../../store/parcels.ts'
import {
  insertReconciliation,
  newestReconciliation,
  type Occasion,
  type StoredReconciliation,
} from '../../store/reconciliations.ts'
import { keepRuleBook } from '../../store/rule-books.ts'
import type { DatedStatus } from '../../store/statuses.ts'
import type { OperationContext } from '../context.ts'
import { deriveStatus } from './derive-status.ts'
import { ENGINE } from './engine.ts'
import { gatherInput } from './gather-input.ts'
import { projectDiscrepancies } from './project-discrepancies.ts'

/** What a run came to: its answer as stored, what it changed, and the status that follows. */
export type Reconciled = {
  readonly reconciliation: StoredReconciliation
  readonly changes: readonly ChangeNoticed[]
  readonly status: DatedStatus
}

/**
 * Compares a parcel's as-built with its newest findings and keeps the answer. Part of the transaction of whatever
 * brought it about, so that a changed file is never seen without its answer; in the service's name, because the answer
 * rests on more than whoever brought it about may see. Where nothing it rests on has changed, the answer is the newest.
 */
export const reconcileParcel = (
  context: OperationContext,
  actor: Actor,
  parcel: string,
  occasion: Occasion,
): Promise<Reconciled> =>
  transact(context.database, asService(actor), async (tx) => {
    const { county } = actor
    await lockParcel(tx, county, parcel)
    const { input, named, findings } = await gatherInput(tx, context, county, parcel)
    const newest = await newestReconciliation(tx, county, parcel)
    const at = after(newest?.madeAt, context.clock())
    if (newest && newest.inputHash === hashOf(named) && newest.engine === ENGINE) {
      const { status } = await deriveStatus(tx, county, parcel, input, at)
      return { reconciliation: newest, changes: [], status }
    }
    await keepRuleBook(tx, context.book, at)
    const answer = reconcile(input)
    const reconciliation = await insertReconciliation(tx, county, {
      id: context.newId(),
      parcel,
      findings: findings?.id ?? null,
      organization: findings?.organization ?? null,
      inputs: named,
      engine: ENGINE,
      result: answer,
      asBuiltOn: answer.asBuilt.on,
      occasion,
      madeAt: at,
    })
    const changes = await projectDiscrepancies(tx, context, county, reconciliation, findings)
    const { status } = await deriveStatus(tx, county, parcel, input, at)
    await recordEvent(tx, asService(actor), {
      id: context.newId(),
      kind: 'parcel-reconciled',
      subjectKind: 'reconciliation',
      subject: reconciliation.id,
      parcel,
      beforeHash: newest?.resultHash ?? null,
      afterHash: reconciliation.resultHash,
      body: { occasion, changes: changes.length },
      at,
    })
    return { reconciliation, changes, status }
  })

/** Processes' clocks differ: what was made after another must also say so. */
const after = (before: Date | undefined, now: Date): Date =>
  before && before >= now ? new Date(before.getTime() + 1) : now
