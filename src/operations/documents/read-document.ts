import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type DocumentPage, pagesOf } from '../../store/document-pages.ts'
import { type Document, type DocumentState, documentById, documentsAfter } from '../../store/documents.ts'
import { type Transcription, transcriptionsOf } from '../../store/transcriptions.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

export type DocumentRead = {
  readonly document: Document
  readonly pages: readonly DocumentPage[]
  readonly transcriptions: readonly Transcription[]
}

type Context = Pick<OperationContext, 'database'>

/** A paper: its state, its text, what was proposed, and what a person made of it. */
export const readDocumentTaken = (
  context: Context,
  actor: Person,
  id: string,
): Promise<Answer<DocumentRead>> =>
  transact(context.database, actor, async (tx) => {
    const document = await documentById(tx, actor.county, id)
    if (!document) return notFound()
    return ok({
      document,
      pages: await pagesOf(tx, actor.county, id),
      transcriptions: await transcriptionsOf(tx, actor.county, id),
    })
  })

/** Those of one state, or all, in the order they came. */
export const listDocuments = (
  context: Context,
  actor: Person,
  state: DocumentState | undefined,
  after: string | undefined,
  most: number,
): Promise<readonly Document[]> =>
  transact(context.database, actor, (tx) => documentsAfter(tx, actor.county, state, after, most))
