import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Decision } from '../../store/decisions.ts'
import { recordEvent } from '../../store/events.ts'
import { changeFiling, type FilingChange } from '../../store/filing-changes.ts'
import { type PermitOnFile, permitById, permitsFiled } from '../../store/permits.ts'
import { lockTogether } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { type Reconciled, reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { type Answer, conflict, notFound, stale } from '../refusal.ts'
import { type DecisionTouched, decisionsResting, touchedBy } from './decisions-touched.ts'
import type { FilingChangeAsked } from './filing-asked.ts'
import { cannotBeFiledSo, placeAsked } from './filing-faults.ts'
import { alreadyOnFile } from './permit-faults.ts'

export type FilingChanged = {
  readonly permit: PermitOnFile
  readonly change: FilingChange
  /** Every parcel whose as-built it changes. */
  readonly reconciled: readonly (Reconciled & { readonly parcel: string })[]
  /** Decisions in force that stood on the permit or on what followed from it. None is undone. */
  readonly decisions: readonly DecisionTouched[]
}

/**
 * Moves a permit to the parcel that it belongs to, voids it, merges it into another that is the same paper, or undoes one of
 * these. Nothing is deleted. The parcels that it touches are reconciled with it, in one transaction.
 */
export const changeHowFiled = (
  context: OperationContext,
  actor: Person,
  asked: FilingChangeAsked,
): Promise<Answer<FilingChanged>> =>
  transact(context.database, actor, async (tx, within) => {
    const { county, account } = actor
    const at = context.clock()
    const seen = await permitById(tx, county, asked.id)
    if (!seen) return notFound()
    const place = await placeAsked(tx, county, seen, asked)
    if (!place.ok) return place
    const { target, other } = place.value
    await lockTogether(tx, county, [...new Set([seen.parcel, target.parcel, other?.parcel ?? seen.parcel])])
    const old = await permitById(tx, county, asked.id)
    // Somebody else moved it meanwhile, away from what is locked.
    if (!old || old.parcel !== seen.parcel) return stale()
    if (asked.version !== undefined && asked.version !== old.revision) return stale()
    const refusal = cannotBeFiledSo(old, asked.act, other && (await permitById(tx, county, other.id)))
    if (refusal) return conflict(refusal)
    const takesPart = asked.act !== 'void' && asked.act !== 'merge'
    const twin = takesPart
      ? alreadyOnFile(
          (await permitsFiled(tx, county, target.parcel)).filter(({ id }) => id !== old.id),
          old.record,
        )
      : undefined
    if (twin)
      return conflict(
        `Permit ${twin.record.number} (${twin.record.kind}) is in that parcel's file already, as ${twin.id}. ` +
          'If they are the same paper, merge them.',
      )

    const permit: PermitOnFile = { ...old, ...target, revision: old.revision + 1, changedAt: at }
    const made: Omit<FilingChange, 'note'> = {
      id: context.newId(),
      permit: old.id,
      revision: permit.revision,
      act: asked.act,
      reason: asked.reason,
      fromParcel: old.parcel,
      toParcel: permit.parcel,
      other: other?.id ?? null,
      changedBy: account,
      changedAt: at,
    }
    const resting: readonly Decision[] = await decisionsResting(tx, county, [old.system, permit.system])
    await changeFiling(tx, county, permit, made)
    await recordEvent(tx, actor, {
      id: made.id,
      kind: `permit-filing-${asked.act}`,
      subjectKind: 'permit',
      subject: old.id,
      parcel: old.parcel,
      body: { reason: asked.reason, note: asked.note, toParcel: permit.parcel, other: made.other },
      at,
    })
    const reconciled = []
    for (const parcel of [...new Set([old.parcel, permit.parcel])].sort()) {
      const system = parcel === permit.parcel ? permit.system : old.system
      const run = await reconcileParcel(
        { ...context, database: within },
        actor,
        parcel,
        'permit-refiled',
        system,
      )
      reconciled.push({ ...run, parcel })
    }
    const changes = reconciled.flatMap((run) => run.changes)
    return ok({
      permit,
      change: { ...made, note: asked.note },
      reconciled,
      decisions: touchedBy(resting, old.id, changes),
    })
  })
