import { ok } from '../../base/result.ts'
import type { ProposedPermit } from '../../reading/proposal.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type PageShape, shapesOf, textAfter } from '../../store/document-pages.ts'
import {
  type Document,
  type DocumentState,
  documentById,
  documentsAfter,
  proposalsAt,
} from '../../store/documents.ts'
import { type Transcription, transcriptionsOf } from '../../store/transcriptions.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

export type DocumentRead = {
  readonly document: Document
  readonly pages: readonly PageShape[]
  readonly transcriptions: readonly Transcription[]
  /** Those that were asked for, by their places from 0. */
  readonly proposals: ReadonlyMap<number, ProposedPermit>
}

type Context = Pick<OperationContext, 'database'>

/** What a paper is and what a person made of it; `wanted` says which of its proposals are read with it. */
export const readDocumentTaken = (
  context: Context,
  actor: Person,
  id: string,
  wanted: (document: Document, transcriptions: readonly Transcription[]) => readonly number[] = () => [],
): Promise<Answer<DocumentRead>> =>
  transact(context.database, actor, async (tx) => {
    const document = await documentById(tx, actor.county, id)
    if (!document) return notFound()
    const transcriptions = await transcriptionsOf(tx, actor.county, id)
    const pages = await shapesOf(tx, actor.county, id)
    const proposals = await proposalsAt(tx, actor.county, id, wanted(document, transcriptions))
    return ok({ document, pages, transcriptions, proposals })
  })

/** What is written on its pages, from the page after `after` on. */
export const readText = (
  context: Context,
  actor: Person,
  { id, after, most }: { readonly id: string; readonly after: number; readonly most: number },
): Promise<Answer<Awaited<ReturnType<typeof textAfter>>>> =>
  transact(context.database, actor, async (tx) => {
    if (!(await documentById(tx, actor.county, id))) return notFound()
    return ok(await textAfter(tx, actor.county, id, after, most))
  })

/** What was proposed, from the place `from` on. */
export const readProposals = (
  context: Context,
  actor: Person,
  { id, from, most }: { readonly id: string; readonly from: number; readonly most: number },
): Promise<Answer<DocumentRead['proposals']>> =>
  transact(context.database, actor, async (tx) => {
    const document = await documentById(tx, actor.county, id)
    if (!document) return notFound()
    const places = document.permits.map((_, place) => place).slice(from, from + most)
    return ok(await proposalsAt(tx, actor.county, id, places))
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
