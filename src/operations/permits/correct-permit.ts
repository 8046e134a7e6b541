import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { PermitRecord } from '../../records/permit.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import { hashOf } from '../../store/hash.ts'
import { lockParcel } from '../../store/parcels.ts'
import {
  numberedAlike,
  type PermitContent,
  permitById,
  permitsFiled,
  revisePermit,
} from '../../store/permits.ts'
import type { OperationContext } from '../context.ts'
import { reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'
import { systemAsked } from '../systems/system-asked.ts'
import { carrySources } from './carry-sources.ts'
import type { PermitEntered } from './enter-permit.ts'
import { alreadyOnFile, datesAhead, notInFile, sayOnFile } from './permit-faults.ts'

export type PermitCorrection = {
  readonly id: string
  /** The revision that was read; undefined where whatever is there is to be replaced. */
  readonly version: number | undefined
  readonly record: PermitRecord
  readonly reason: string
  /** The system that it builds, where it is another than was said. */
  readonly system?: string | undefined
}

/** Corrects how a permit was read: a new revision with a reason. Values that read as before keep their source. */
export const correctPermit = (
  context: OperationContext,
  actor: Person,
  { id, version, record, reason, system: askedSystem }: PermitCorrection,
): Promise<Answer<PermitEntered>> =>
  transact(context.database, actor, async (tx, within) => {
    const { county, account } = actor
    const at = context.clock()
    const known = await permitById(tx, county, id)
    if (!known) return notFound()
    const issues = datesAhead(record, dayOf(at), '/record')
    if (issues.length > 0) return invalid(...issues)
    await lockParcel(tx, county, known.parcel)
    const onFile = await permitsFiled(tx, county, known.parcel)
    const old = onFile.find((permit) => permit.id === id)
    if (!old) return known.standing === 'in-file' ? stale() : conflict(notInFile(known))
    if (version !== undefined && version !== old.revision) return stale()
    const placed = await systemAsked(tx, county, old.parcel, askedSystem ?? old.system)
    if (!placed.ok) return placed
    const system = placed.value.system.id
    const twin = alreadyOnFile(
      onFile.filter((permit) => permit !== old),
      record,
    )
    if (twin) return conflict(sayOnFile(twin))

    const content: PermitContent = {
      record,
      sources: carrySources(old, record, { kind: 'typed', by: account, on: at.toISOString() }),
    }
    const revision = old.revision + 1
    await revisePermit(
      tx,
      county,
      { id, parcel: old.parcel, system, revision, ...content },
      { by: account, at, reason, transcription: null },
    )
    await recordEvent(tx, actor, {
      id: context.newId(),
      kind: 'permit-corrected',
      subjectKind: 'permit',
      subject: id,
      parcel: old.parcel,
      beforeHash: hashOf({ record: old.record, sources: old.sources }),
      afterHash: hashOf(content),
      body: { reason },
      at,
    })
    const reconciled = await reconcileParcel(
      { ...context, database: within },
      actor,
      old.parcel,
      'permit-corrected',
      system,
    )
    const alike = await numberedAlike(tx, county, { number: record.number, parcel: old.parcel })
    return ok({ permit: { ...old, system, revision, ...content, changedAt: at }, reconciled, alike })
  })
