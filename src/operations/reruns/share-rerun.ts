import { invariant } from '../../base/invariant.ts'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { dayOf } from '../../base/plain-date.ts'
import { breathing } from '../../jobs/breathe.ts'
import type { JobRun } from '../../jobs/queue.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { countyById } from '../../store/counties.ts'
import { asService, type Service } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import type { ChangeNoticed } from '../../store/discrepancy-changes.ts'
import { lockParcels, onFileOf } from '../../store/many-parcels.ts'
import {
  moveRerun,
  noteOutcomes,
  type ParcelOutcome,
  rerunById,
  rerunCounts,
  takeWaiting,
} from '../../store/reruns.ts'
import { ruleBookByHash } from '../../store/rule-books.ts'
import { outOfTheOrdinary } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { inputAmong } from './gather-many.ts'
import { type BookFinder, isAffected, rememberingBooks } from './is-affected.ts'
import { ParcelFault } from './parcel-fault.ts'
import { reconcileMany } from './reconcile-many.ts'

/** As many as are read at once and written in one transaction; small enough that a pause is heard within a second or so. */
const AT_ONCE = 50

export type ShareDone = { readonly rerun: string; readonly parcels: number }

/**
 * Takes parcels of a re-run that still wait, some at a time, until none does or it is paused. Any number of processes
 * may do so at once. What was taken is noted in the transaction that reconciled it: a process that dies leaves those
 * parcels waiting and everything else done.
 */
export async function shareRerun(
  context: OperationContext,
  { actor, data, report, signal }: JobRun<'share-rerun'>,
): Promise<ShareDone> {
  const service = asService(actor)
  const { county } = actor
  const bookBy = rememberingBooks((hash) =>
    transact(context.database, service, (tx) => ruleBookByHash(tx, hash)),
  )
  let parcels = 0
  while (!signal.aborted) {
    const done = await takeSome(context, service, data.rerun, bookBy)
    if (done === 0) break
    parcels += done
    await transact(context.database, service, async (tx) => {
      const { waiting, ...ended } = await rerunCounts(tx, county, data.rerun)
      const sum = Object.values(ended).reduce((total, count) => total + count, 0)
      await report({ done: sum, total: sum + waiting, says: `${ended.changed} changed so far` })
    })
  }
  signal.throwIfAborted()
  await transact(context.database, service, async (tx) => {
    const { waiting } = await rerunCounts(tx, county, data.rerun)
    if (waiting === 0) await moveRerun(tx, county, data.rerun, ['running'], 'done', context.clock())
  })
  return { rerun: data.rerun, parcels }
}

/** How many it took. Where one of them can't be reconciled they are taken singly, and that one is noted with its reason. */
async function takeSome(
  context: OperationContext,
  service: Service,
  rerun: string,
  bookBy: BookFinder,
): Promise<number> {
  try {
    return await takeTogether(context, service, rerun, bookBy, AT_ONCE)
  } catch (fault) {
    if (fault instanceof OutsideFailure) throw fault
  }
  let taken = 0
  for (let more = 1; more > 0 && taken < AT_ONCE; taken += more) {
    more = await takeTogether(context, service, rerun, bookBy, 1).catch((fault: unknown) =>
      setAside(context, service, rerun, fault),
    )
  }
  return taken
}

const takeTogether = (
  context: OperationContext,
  service: Service,
  id: string,
  bookBy: BookFinder,
  most: number,
): Promise<number> =>
  transact(context.database, service, async (tx, within) => {
    const { county } = service
    const parcels = await takeWaiting(tx, county, id, most)
    if (parcels.length === 0) return 0
    const [served, rerun] = [await countyById(tx, county), await rerunById(tx, county, id)]
    invariant(served && rerun, `a re-run of ${county} that is not there`)
    const { plain, others } = await byKind(tx, county, parcels)
    await lockParcels(tx, county, plain)
    const onFile = await onFileOf(tx, county, plain)
    const asked = { place: served.place, asOf: dayOf(context.clock()), book: context.book }
    const affected = new Map<string, ReconcileInput>()
    const breathe = breathing()
    for (const parcel of plain) {
      await breathe()
      try {
        const input = inputAmong(onFile, parcel, asked)
        if (await isAffected(county, input, onFile.answers.get(parcel), bookBy)) affected.set(parcel, input)
      } catch (fault) {
        throw new ParcelFault(parcel, fault)
      }
    }
    const changes = new Map(await reconcileMany(tx, context, service, affected, onFile, rerun.cause))
    for (const parcel of others) {
      try {
        changes.set(
          parcel,
          (await reconcileParcel({ ...context, database: within }, service, parcel, rerun.cause)).changes,
        )
      } catch (fault) {
        throw new ParcelFault(parcel, fault)
      }
    }
    await noteOutcomes(
      tx,
      county,
      id,
      parcels.map((parcel) => outcomeOf(parcel, changes.get(parcel))),
    )
    return parcels.length
  })

/** Parcels with a system of their own alone are read and written together; the others one by one, with all that share. */
async function byKind(tx: Tx, county: string, parcels: readonly string[]) {
  const others = await outOfTheOrdinary(tx, county, parcels)
  return { plain: parcels.filter((it) => !others.has(it)), others: parcels.filter((it) => others.has(it)) }
}

function outcomeOf(parcel: string, changes: readonly ChangeNoticed[] | undefined): ParcelOutcome {
  if (!changes) return { parcel, outcome: 'unaffected', says: null }
  if (changes.length === 0) return { parcel, outcome: 'same', says: null }
  const says = changes.map(({ change, body }) => `${body.kind} ${change}`).join('; ')
  return { parcel, outcome: 'changed', says: says.slice(0, 500) }
}

/** Notes it as failed, and the parcel is left as it was. What is no parcel's fault (the database is gone) is thrown. */
async function setAside(
  context: OperationContext,
  service: Service,
  rerun: string,
  fault: unknown,
): Promise<number> {
  if (!(fault instanceof ParcelFault) || fault.cause instanceof OutsideFailure) throw fault
  const { parcel } = fault
  const outcome: ParcelOutcome = { parcel, outcome: 'failed', says: fault.message.slice(0, 500) }
  await transact(context.database, service, (tx) => noteOutcomes(tx, service.county, rerun, [outcome]))
  return 1
}
