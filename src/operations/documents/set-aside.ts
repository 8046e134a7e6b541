import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import {
  changeDocument,
  type Document,
  type DocumentState,
  documentById,
  lockDocument,
} from '../../store/documents.ts'
import { recordEvent } from '../../store/events.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'

type Looked = { readonly document: string; readonly version: number | undefined }

const MOST = 500

/** Takes a paper out of those that wait, with the reason; it is kept, and can be brought back. */
export const setAside = (
  context: OperationContext,
  actor: Person,
  { reason, ...looked }: Looked & { readonly reason: string },
): Promise<Answer<Document>> => {
  const why = reason.replaceAll(/\s+/g, ' ').trim()
  if (why === '' || why.length > MOST || !why.isWellFormed() || /[\u0000-\u001f\u007f]/.test(why)) {
    const message = why.length > MOST ? `at most ${MOST} characters` : 'write a reason'
    return Promise.resolve(invalid({ pointer: '/reason', message }))
  }
  return move(context, actor, looked, {
    from: ['proposed'],
    to: 'set-aside',
    reason: why,
    kind: 'document-set-aside',
    refusal: 'Only a document that is waiting for confirmation can be set aside.',
  })
}

/** Puts a paper that was set aside back among those that wait. */
export const bringBack = (
  context: OperationContext,
  actor: Person,
  looked: Looked,
): Promise<Answer<Document>> =>
  move(context, actor, looked, {
    from: ['set-aside'],
    to: 'proposed',
    reason: null,
    kind: 'document-brought-back',
    refusal: 'Only a document that was set aside can be brought back.',
  })

type Move = {
  readonly from: readonly DocumentState[]
  readonly to: DocumentState
  readonly reason: string | null
  readonly kind: string
  readonly refusal: string
}

const move = (
  context: OperationContext,
  actor: Person,
  { document: id, version }: Looked,
  { from, to, reason, kind, refusal }: Move,
): Promise<Answer<Document>> =>
  transact(context.database, actor, async (tx: Tx) => {
    const { county } = actor
    const document = await lockDocument(tx, county, id)
    if (!document) return notFound()
    if (version !== undefined && version !== document.revision) return stale()
    if (!from.includes(document.state)) return conflict(refusal)
    await changeDocument(tx, county, id, { state: to, reason })
    await recordEvent(tx, actor, {
      id: context.newId(),
      kind,
      subjectKind: 'document',
      subject: id,
      parcel: document.parcel,
      body: { reason, before: document.reason },
      at: context.clock(),
    })
    return ok((await documentById(tx, county, id))!)
  })
