import { dayOf, type PlainDate } from '../../base/plain-date.ts'
import { ok, type Result } from '../../base/result.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { PermitRecord } from '../../records/permit.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import {
  changeDocument,
  type Document,
  documentById,
  lockDocument,
  proposalsAt,
} from '../../store/documents.ts'
import { recordEvent } from '../../store/events.ts'
import { hashOf } from '../../store/hash.ts'
import { lockParcel, type Parcel } from '../../store/parcels.ts'
import {
  insertPermit,
  type PermitContent,
  type PermitOnFile,
  permitById,
  permitsFiled,
} from '../../store/permits.ts'
import { insertTranscription } from '../../store/transcriptions.ts'
import type { OperationContext } from '../context.ts'
import { alreadyOnFile, datesAhead, sayOnFile } from '../permits/permit-faults.ts'
import { type Reconciled, reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'
import { type SystemOnFile, systemAsked } from '../systems/system-asked.ts'
import { type PlaceOnPaper, transcriptionSources } from './transcription-sources.ts'

/** One permit on the paper, as a person confirms or corrects it. */
export type PermitConfirmed = {
  readonly parcel: string
  /** Which of its systems it builds; undefined where it has one. */
  readonly system?: string | undefined
  /** Which of the document's proposals it was made from; null where the person typed it all. */
  readonly proposal: number | null
  readonly record: PermitRecord
  readonly places: { readonly [pointer: string]: PlaceOnPaper }
}

export type TranscriptionAsked = {
  readonly document: string
  readonly version: number | undefined
  readonly permits: readonly PermitConfirmed[]
  /** Others of the same paper are still to come: it goes on waiting. */
  readonly more?: boolean
  /** As it was sent, to be kept. */
  readonly body: unknown
}

export type Transcribed = {
  readonly transcription: string
  readonly document: Document
  readonly permits: readonly PermitOnFile[]
  readonly reconciled: readonly (Reconciled & { readonly parcel: Parcel })[]
}

/** Makes permits of what a person confirms on a paper, and reconciles every parcel they belong to. All or none. */
export const confirmTranscription = (
  context: OperationContext,
  actor: Person,
  asked: TranscriptionAsked,
): Promise<Answer<Transcribed>> =>
  transact(context.database, actor, async (tx, within) => {
    const { county, account } = actor
    const at = context.clock()
    const document = await lockDocument(tx, county, asked.document)
    if (!document) return notFound()
    if (asked.version !== undefined && asked.version !== document.revision) return stale()
    const refusal = cannotBeConfirmed(document)
    if (refusal) return conflict(refusal)
    const placed = await place(tx, county, document, asked.permits, dayOf(at))
    if (!placed.ok) return invalid(...placed.error)

    const places = asked.permits.flatMap(({ proposal }) => proposal ?? [])
    const proposals = await proposalsAt(tx, county, document.id, places)

    const id = context.newId()
    await insertTranscription(tx, county, {
      id,
      document: document.id,
      body: asked.body,
      confirmedBy: account,
      confirmedAt: at,
    })
    const permits: PermitOnFile[] = []
    for (const { parcel, system, permit } of placed.value) {
      const content: PermitContent = {
        record: permit.record,
        sources: transcriptionSources({
          document: document.id,
          by: account,
          record: permit.record,
          proposal: permit.proposal === null ? null : (proposals.get(permit.proposal) ?? null),
          places: permit.places,
        }),
      }
      const made = { id: context.newId(), parcel: parcel.id, system: system.id, ...content }
      await insertPermit(tx, county, made, { by: account, at, reason: null, transcription: id })
      await recordEvent(tx, actor, {
        id: context.newId(),
        kind: 'permit-transcribed',
        subjectKind: 'permit',
        subject: made.id,
        parcel: parcel.id,
        afterHash: hashOf(content),
        body: { document: document.id, transcription: id },
        at,
      })
      permits.push((await permitById(tx, county, made.id))!)
    }
    const parcels = [...new Map(placed.value.map(({ parcel }) => [parcel.id, parcel])).values()]
    await changeDocument(tx, county, document.id, {
      state: asked.more ? 'proposed' : 'confirmed',
      ...(document.parcel === null && parcels.length === 1 ? { parcel: parcels[0]!.id } : {}),
    })
    await context.jobs.enqueue(tx, actor, 'learn-form', { transcription: id })
    const reconciled = []
    for (const parcel of parcels) {
      const run = await reconcileParcel(
        { ...context, database: within },
        actor,
        parcel.id,
        'permit-transcribed',
      )
      reconciled.push({ ...run, parcel })
    }
    const now = await documentById(tx, county, document.id)
    return ok({ transcription: id, document: now!, permits, reconciled })
  })

function cannotBeConfirmed({ state, reason }: Document): string | undefined {
  if (state === 'received' || state === 'reading')
    return 'It is still being read: watch its job, and come back.'
  return state === 'failed' ? `It could not be read: ${reason ?? 'see its job'}` : undefined
}

type Placed = SystemOnFile & { readonly permit: PermitConfirmed }

/** Each permit with the parcel it belongs to, locked in one order for everybody; else every fault of all of them. */
async function place(
  tx: Tx,
  county: string,
  document: Document,
  permits: readonly PermitConfirmed[],
  today: PlainDate,
): Promise<Result<readonly Placed[], readonly EntryIssue[]>> {
  const issues: EntryIssue[] = []
  const placed: Placed[] = []
  for (const [index, permit] of permits.entries()) {
    const here = `/permits/${index}`
    const fault = (pointer: string, message: string) => issues.push({ pointer: `${here}${pointer}`, message })
    const found = await systemAsked(tx, county, permit.parcel, permit.system)
    if (found.ok) placed.push({ ...found.value, permit })
    else if (found.error.why === 'invalid') for (const it of found.error.issues) fault(it.pointer, it.message)
    else fault('/parcel', `there is no parcel ${permit.parcel} in this county`)
    if (permit.proposal !== null && !document.permits[permit.proposal]) {
      fault('/proposal', `the document has ${document.permits.length} proposals, counted from 0`)
    }
    issues.push(...datesAhead(permit.record, today, `${here}/entry`))
  }
  const ids = [...new Set(placed.map(({ parcel }) => parcel.id))].sort()
  for (const id of ids) await lockParcel(tx, county, id)
  for (const id of ids) {
    const onFile: PermitOnFile[] = [...(await permitsFiled(tx, county, id))]
    for (const { permit } of placed.filter(({ parcel }) => parcel.id === id)) {
      const twin = alreadyOnFile(onFile, permit.record)
      const pointer = `/permits/${permits.indexOf(permit)}/entry/number`
      if (twin) issues.push({ pointer, message: sayOnFile(twin) })
      onFile.push({
        id: 'this transcription',
        parcel: id,
        system: id,
        standing: 'in-file',
        mergedInto: null,
        revision: 1,
        record: permit.record,
        sources: {},
        enteredAt: new Date(0),
        changedAt: new Date(0),
      })
    }
  }
  return issues.length > 0 ? { ok: false, error: issues } : ok(placed)
}
