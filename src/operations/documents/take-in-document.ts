import { ok } from '../../base/result.ts'
import type { Kept } from '../../files/originals.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { type Document, documentById, documentWithContent, insertDocument } from '../../store/documents.ts'
import { recordEvent } from '../../store/events.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { mayUse } from '../quotas.ts'
import { type Answer, conflict, invalid } from '../refusal.ts'

export type PaperTaken = {
  /** Its bytes are in the originals already. */
  readonly kept: Kept
  readonly mediaType: string
  readonly fileName: string | null
  /** Where it is said which parcel it belongs to; one document may hold permits of several. */
  readonly parcel: string | null
}

export type DocumentTaken = { readonly document: Document; readonly job: string }

/** A paper whose kept copy was damaged, and was sent again: the copy is whole, and what it says is read if it was not. */
async function readAgain(
  context: OperationContext,
  tx: Tx,
  actor: Person,
  { id, parcel, contentHash, state }: Document,
): Promise<Answer<DocumentTaken>> {
  await recordEvent(tx, actor, {
    id: context.newId(),
    kind: 'document-healed',
    subjectKind: 'document',
    subject: id,
    parcel,
    afterHash: contentHash,
    body: { state },
    at: context.clock(),
  })
  const job = await context.jobs.enqueue(tx, actor, 'read-document', { document: id })
  return ok({ document: (await documentById(tx, actor.county, id))!, job })
}

/** Takes a paper in, and leaves it to be read in the background. */
export const takeInDocument = (
  context: OperationContext,
  actor: Person,
  paper: PaperTaken,
): Promise<Answer<DocumentTaken>> =>
  transact(context.database, actor, async (tx) => {
    const { county, account } = actor
    const at = context.clock()
    const parcel = paper.parcel === null ? null : await parcelAsked(tx, county, paper.parcel)
    if (parcel && !parcel.ok) {
      const why = parcel.error.why === 'not-found' ? parcel.error.says : undefined
      return invalid({
        pointer: '/parcel',
        message: why ?? `there is no parcel ${paper.parcel} in this county`,
      })
    }
    const same = await documentWithContent(tx, county, paper.kept.hash)
    if (same && paper.kept.healed) return readAgain(context, tx, actor, same)
    if (same) return conflict(`The same file is already here as document ${same.id} (${same.state}).`)
    const may = await mayUse(tx, context, 'papers', paper.kept.bytes)
    if (!may.ok) return may
    const id = context.newId()
    await insertDocument(tx, county, {
      id,
      parcel: parcel?.value.id ?? null,
      contentHash: paper.kept.hash,
      bytes: paper.kept.bytes,
      mediaType: paper.mediaType,
      fileName: paper.fileName,
      receivedBy: account,
      receivedAt: at,
    })
    await recordEvent(tx, actor, {
      id: context.newId(),
      kind: 'document-taken-in',
      subjectKind: 'document',
      subject: id,
      parcel: parcel?.value.id ?? null,
      afterHash: paper.kept.hash,
      at,
    })
    const job = await context.jobs.enqueue(tx, actor, 'read-document', { document: id })
    const document = await documentById(tx, county, id)
    return ok({ document: document!, job })
  })
