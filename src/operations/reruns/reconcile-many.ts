import { canonicalText } from '../../base/canonical.ts'
import { breathing } from '../../jobs/breathe.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { keptForm } from '../../reconcile/kept.ts'
import { reconcile } from '../../reconcile/reconcile.ts'
import { ownSystem } from '../../records/system.ts'
import {
  discrepanciesOnMany,
  insertReconciliations,
  recordEvents,
  type WrittenReconciliation,
  writeDiscrepancies,
  writeStatuses,
} from '../../store/answers-at-once.ts'
import type { Service } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import type { StandingDiscrepancy } from '../../store/discrepancies.ts'
import { type ChangeNoticed, insertChanges } from '../../store/discrepancy-changes.ts'
import { hashOf, sha256 } from '../../store/hash.ts'
import type { ManyOnFile } from '../../store/many-parcels.ts'
import { RANKS } from '../../store/queue-ranks.ts'
import type { Occasion } from '../../store/reconciliations.ts'
import { keepRuleBook } from '../../store/rule-books.ts'
import type { OperationContext } from '../context.ts'
import { parcelStatus, systemStatus } from '../reconciliation/derive-status.ts'
import { ENGINE } from '../reconciliation/engine.ts'
import { nameInputs } from '../reconciliation/gather-input.ts'
import { projectOnto } from '../reconciliation/project-onto.ts'
import { ParcelFault } from './parcel-fault.ts'

/**
 * What `reconcileParcel` does for one parcel, for many that are locked and read already: the same answers, written in as
 * many statements as one takes. Returns what changed on each. Where nothing an answer rests on has changed since the one
 * before it, only the status is derived anew. Throws ParcelFault, naming the parcel that can't be reconciled.
 */
export async function reconcileMany(
  tx: Tx,
  context: OperationContext,
  service: Service,
  inputs: ReadonlyMap<string, ReconcileInput>,
  onFile: ManyOnFile,
  occasion: Occasion,
): Promise<ReadonlyMap<string, readonly ChangeNoticed[]>> {
  const { county } = service
  if (inputs.size === 0) return new Map()
  const standing = await discrepanciesOnMany(tx, county, [...inputs.keys()])
  await keepRuleBook(tx, context.book, context.clock())
  const breathe = breathing()
  const runs: ReturnType<typeof run>[] = []
  for (const [parcel, input] of inputs) {
    await breathe()
    try {
      runs.push(run(parcel, input))
    } catch (fault) {
      throw new ParcelFault(parcel, fault)
    }
  }
  const made = runs.flatMap(({ made: it }) => it ?? [])
  await insertReconciliations(tx, county, made)
  await writeDiscrepancies(
    tx,
    county,
    runs.flatMap(({ projection }) => projection?.inserted ?? []),
    runs.flatMap(({ projection }) => projection?.updated ?? []),
  )
  await insertChanges(
    tx,
    county,
    runs.flatMap(({ changes }) => changes),
  )
  await writeStatuses(
    tx,
    county,
    runs.map(({ status }) => status),
  )
  await recordEvents(
    tx,
    service,
    runs.flatMap(({ made: it, before, changes, parcel }) =>
      it
        ? [
            {
              id: context.newId(),
              kind: 'parcel-reconciled',
              subjectKind: 'reconciliation' as const,
              subject: it.id,
              parcel,
              beforeHash: before,
              afterHash: it.resultHash,
              body: { occasion, changes: changes.length },
              at: it.madeAt,
            },
          ]
        : [],
    ),
  )
  return new Map(runs.map(({ parcel, changes }) => [parcel, changes]))

  function run(parcel: string, input: ReconcileInput) {
    const last = onFile.answers.get(parcel)
    const findings = onFile.findings.get(parcel)
    const decisions = onFile.decisions.get(parcel) ?? []
    const before = standing.get(parcel) ?? []
    const at = after(last?.madeAt, context.clock())
    const named = nameInputs(county, input)
    const inputHash = hashOf(named)
    const statusOf = (of: ReconcileInput, stands: Parameters<typeof systemStatus>[1], when: Date) =>
      parcelStatus(parcel, [{ system: own(parcel), input: of, status: systemStatus(of, stands), at: when }])
    if (last && last.inputHash === inputHash && last.engine === ENGINE) {
      const status = statusOf(input, { discrepancies: before, decisions }, at)
      return { parcel, made: null, projection: null, changes: [], before: null, status }
    }
    const result = reconcile(input)
    const resultText = canonicalText(keptForm(result))
    const it: WrittenReconciliation = {
      id: context.newId(),
      parcel,
      system: parcel,
      findings: findings?.id ?? null,
      organization: findings?.organization ?? null,
      inputs: named,
      inputHash,
      engine: ENGINE,
      result,
      asBuiltOn: result.asBuilt.on,
      resultText,
      resultHash: sha256(resultText),
      occasion,
      madeAt: at,
    }
    const projection = projectOnto({ before, decisions, findings }, it, context)
    const discrepancies = projection.standing.toSorted(inQueueOrder)
    const status = statusOf(input, { discrepancies, decisions }, at)
    return {
      parcel,
      made: it,
      projection,
      changes: projection.changes,
      before: last?.resultHash ?? null,
      status,
    }
  }
}

/** Its number is told of no parcel that has its own system alone. */
const own = (parcel: string) => ownSystem({ id: parcel, number: '' })

/** As they are read back one parcel at a time: worst first, then oldest. */
const inQueueOrder = (a: StandingDiscrepancy, b: StandingDiscrepancy): number =>
  RANKS[a.severity] - RANKS[b.severity] ||
  a.raisedAt.getTime() - b.raisedAt.getTime() ||
  (a.id < b.id ? -1 : 1)

/** Processes' clocks differ: what was made after another must also say so. */
const after = (before: Date | undefined, now: Date): Date =>
  before && before >= now ? new Date(before.getTime() + 1) : now
