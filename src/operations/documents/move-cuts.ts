import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { changeDocument, type Document, documentById, lockDocument } from '../../store/documents.ts'
import { recordEvent } from '../../store/events.ts'
import { transcriptionsOf } from '../../store/transcriptions.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'
import { proposeFromWords } from './propose-from-words.ts'

export type CutsAsked = {
  readonly document: string
  readonly version: number | undefined
  /** The pages that permits begin on, counted from 1; the first permit begins on page 1 in any case. */
  readonly begins: readonly number[]
}

const MOST_PERMITS = 50

/**
 * Says which pages of a paper belong to which permit, and proposes each permit anew from its own pages. Once one of the
 * permits is confirmed the cuts stand: what was confirmed was read from them.
 */
export const moveCuts = (
  context: OperationContext,
  actor: Person,
  { document: id, version, begins }: CutsAsked,
): Promise<Answer<Document>> =>
  transact(context.database, actor, async (tx) => {
    const { county } = actor
    const document = await lockDocument(tx, county, id)
    if (!document) return notFound()
    if (version !== undefined && version !== document.revision) return stale()
    if (document.state !== 'proposed')
      return conflict('Only a document that is to be confirmed can be split.')
    if ((await transcriptionsOf(tx, county, id)).length > 0) {
      return conflict('One of its permits is already confirmed, so the split cannot change.')
    }
    const pages = document.pages ?? 0
    const starts = [...new Set([1, ...begins])].sort((one, other) => one - other)
    const wrong = starts.find((page) => !Number.isInteger(page) || page < 1 || page > pages)
    if (wrong !== undefined) {
      return invalid({ pointer: '/begins', message: `there is no page ${wrong}: the document has ${pages}` })
    }
    if (starts.length > MOST_PERMITS) {
      return invalid({ pointer: '/begins', message: `at most ${MOST_PERMITS} permits in one document` })
    }
    const proposals = await proposeFromWords(tx, county, id, groupsOf(starts, pages))
    await changeDocument(tx, county, id, { proposals })
    await recordEvent(tx, actor, {
      id: context.newId(),
      kind: 'document-cut',
      subjectKind: 'document',
      subject: id,
      parcel: document.parcel,
      body: { begins: starts, before: document.proposals.map((it) => it.pages[0] ?? null) },
      at: context.clock(),
    })
    return ok((await documentById(tx, county, id))!)
  })

/** Page numbers from each beginning to before the next. */
const groupsOf = (starts: readonly number[], pages: number): readonly (readonly number[])[] =>
  starts.map((from, index) => {
    const next = starts[index + 1] ?? pages + 1
    return Array.from({ length: next - from }, (_, step) => from + step)
  })
