import { reconcile } from '../../reconcile/reconcile.ts'
import type { System } from '../../records/system.ts'
import { type Actor, asService } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import type { ChangeNoticed } from '../../store/discrepancy-changes.ts'
import { recordEvent } from '../../store/events.ts'
import { hashOf } from '../../store/hash.ts'
import {
  insertReconciliation,
  newestReconciliation,
  type Occasion,
  type StoredReconciliation,
} from '../../store/reconciliations.ts'
import { keepRuleBook } from '../../store/rule-books.ts'
import type { DatedStatus } from '../../store/statuses.ts'
import { lockTogether } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { deriveStatuses, type SystemStanding, standingSystem } from './derive-status.ts'
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
 * Compares the as-built of each system on a parcel with its newest findings and keeps the answers; told of is that of
 * `asked`, else of the first. A system that other parcels share takes them along, since their status follows from it too.
 * Part of the transaction of whatever brought it about, so that a changed file is never seen without its answer; in the
 * service's name, because the answer rests on more than whoever brought it about may see. Where nothing an answer rests on
 * has changed, it is the newest.
 */
export const reconcileParcel = (
  context: OperationContext,
  actor: Actor,
  parcel: string,
  occasion: Occasion,
  asked?: string,
): Promise<Reconciled> =>
  transact(context.database, asService(actor), async (tx) => {
    const { county } = actor
    const { parcels, systems } = await lockTogether(tx, county, [parcel])
    const runs: SystemRun[] = []
    for (const system of systems) runs.push(await reconcileSystem(tx, context, actor, system, occasion))
    const statuses = await deriveStatuses(tx, county, parcels, runs)
    const told = runs.find(({ system }) => system.id === asked) ?? runs[0]!
    return {
      reconciliation: told.reconciliation,
      changes: runs.flatMap(({ changes }) => changes),
      status: statuses.get(parcel)!.status,
    }
  })

type SystemRun = SystemStanding & Pick<Reconciled, 'reconciliation' | 'changes'>

async function reconcileSystem(
  tx: Tx,
  context: OperationContext,
  actor: Actor,
  system: System,
  occasion: Occasion,
): Promise<SystemRun> {
  const { county } = actor
  const { parcel } = system
  const { input, named, findings } = await gatherInput(tx, context, county, system)
  const newest = await newestReconciliation(tx, county, system.id)
  const at = after(newest?.madeAt, context.clock())
  if (newest && newest.inputHash === hashOf(named) && newest.engine === ENGINE) {
    return { ...(await standingSystem(tx, county, system, input, at)), reconciliation: newest, changes: [] }
  }
  await keepRuleBook(tx, context.book, at)
  const answer = reconcile(input)
  const reconciliation = await insertReconciliation(tx, county, {
    id: context.newId(),
    parcel,
    system: system.id,
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
  return { ...(await standingSystem(tx, county, system, input, at)), reconciliation, changes }
}

/** Processes' clocks differ: what was made after another must also say so. */
const after = (before: Date | undefined, now: Date): Date =>
  before && before >= now ? new Date(before.getTime() + 1) : now
