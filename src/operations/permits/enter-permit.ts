import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { PermitRecord } from '../../records/permit.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import { hashOf } from '../../store/hash.ts'
import { lockParcel } from '../../store/parcels.ts'
import {
  insertPermit,
  type NumberedAlike,
  numberedAlike,
  type PermitContent,
  type PermitOnFile,
  permitsFiled,
} from '../../store/permits.ts'
import type { OperationContext } from '../context.ts'
import { type Reconciled, reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { type Answer, conflict, invalid } from '../refusal.ts'
import { systemAsked } from '../systems/system-asked.ts'
import { alreadyOnFile, datesAhead, sayOnFile } from './permit-faults.ts'

export type PermitEntered = {
  readonly permit: PermitOnFile
  readonly reconciled: Reconciled
  /** Permits of the same number in other parcels' files: suspected to be the same paper. */
  readonly alike: readonly NumberedAlike[]
}

/** Adds a permit, typed from the paper, to a parcel's file, and reconciles the parcel with it. */
export const enterPermit = (
  context: OperationContext,
  actor: Person,
  asked: string,
  record: PermitRecord,
  askedSystem?: string,
): Promise<Answer<PermitEntered>> =>
  transact(context.database, actor, async (tx, within) => {
    const { county, account } = actor
    const at = context.clock()
    const found = await systemAsked(tx, county, asked, askedSystem)
    if (!found.ok) return found
    const { parcel, system } = found.value
    const issues = datesAhead(record, dayOf(at))
    if (issues.length > 0) return invalid(...issues)
    await lockParcel(tx, county, parcel.id)
    const twin = alreadyOnFile(await permitsFiled(tx, county, parcel.id), record)
    if (twin) return conflict(sayOnFile(twin))
    const content: PermitContent = {
      record,
      sources: { '': { kind: 'typed', by: account, on: at.toISOString() } },
    }
    const id = context.newId()
    await insertPermit(
      tx,
      county,
      { id, parcel: parcel.id, system: system.id, ...content },
      { by: account, at, reason: null, transcription: null },
    )
    await recordEvent(tx, actor, {
      id: context.newId(),
      kind: 'permit-entered',
      subjectKind: 'permit',
      subject: id,
      parcel: parcel.id,
      afterHash: hashOf(content),
      at,
    })
    const reconciled = await reconcileParcel(
      { ...context, database: within },
      actor,
      parcel.id,
      'permit-entered',
      system.id,
    )
    const made = {
      id,
      parcel: parcel.id,
      system: system.id,
      revision: 1,
      standing: 'in-file' as const,
      mergedInto: null,
    }
    const permit = { ...made, ...content, enteredAt: at, changedAt: at }
    const alike = await numberedAlike(tx, county, { number: record.number, parcel: parcel.id })
    return ok({ permit, reconciled, alike })
  })
