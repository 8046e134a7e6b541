import type { FastifyReply, FastifyRequest } from 'fastify'
import type { OperationContext } from '../../../operations/context.ts'
import { listDocuments, readDocumentTaken } from '../../../operations/documents/read-document.ts'
import type { Person } from '../../../store/database/actor.ts'
import type { Document } from '../../../store/documents.ts'
import type { Transcription } from '../../../store/transcriptions.ts'
import { answered } from '../../api/answer.ts'
import { documentPath, documentsPath } from './addresses.ts'
import { confirmedShown, doneOf } from './confirmed.ts'
import { presentForm, type Returned } from './present.ts'
import { confirmView } from './view.ts'

type Show = {
  /** Which of its permits was asked for; the first that is not confirmed where left out. */
  readonly permit?: number | undefined
  /** The document that was finished just before. */
  readonly before?: string | undefined
  readonly returned?: Returned
  readonly aside?: { readonly typed: string; readonly fault: string }
  readonly cuts?: { readonly typed: string; readonly fault: string }
  readonly status?: number
}

const REFRESH_SECONDS = 3

/** A document as it is now, with what came back from a form beside it. */
export async function showDocument(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
  { permit: asked, before, returned, aside, cuts, status = 200 }: Show,
): Promise<FastifyReply> {
  const { context, actor } = request
  const permitOf = (document: Document, done: ReadonlySet<number>): number =>
    returned && asked !== undefined ? asked : openPermit(document.permits.length, done, asked)
  const read = answered(
    await readDocumentTaken(context, actor, id, (document, made) => [
      permitOf(document, doneIn(document, made)),
      ...confirmedShown(made).flatMap(({ proposal }) => proposal ?? []),
    ]),
  )
  const { document, transcriptions } = read
  const done = doneIn(document, transcriptions)
  const permit = permitOf(document, done)
  // What somebody typed stays on the page, even if the document is no longer waiting.
  const form = document.state === 'proposed' || returned ? presentForm(read, permit, returned ?? null) : null
  if (document.state === 'received' || document.state === 'reading')
    reply.header('refresh', String(REFRESH_SECONDS))
  const body = confirmView({
    county: actor.county,
    read,
    form,
    cuts: { document, permit, done, typed: cuts?.typed ?? null, fault: cuts?.fault ?? null },
    aside: { typed: aside?.typed ?? '', fault: aside?.fault ?? null },
    next: (await nextWaiting(context, actor, id)) ?? null,
    before: await sayBefore(context, actor, before),
  })
  return reply.page(
    { title: document.fileName ?? 'Document', body, modules: form ? ['confirm-keys.js'] : [] },
    status,
  )
}

const doneIn = ({ state }: Document, made: readonly Transcription[]): ReadonlySet<number> =>
  state === 'proposed' ? doneOf(made) : new Set<number>()

/** The one asked for where it is still open, else the first that is. */
function openPermit(proposals: number, done: ReadonlySet<number>, asked: number | undefined): number {
  if (asked !== undefined && asked < proposals && !done.has(asked)) return asked
  const open = Array.from({ length: proposals }, (_, index) => index).find((index) => !done.has(index))
  return open ?? 0
}

/** The one that waits next after this, in the order they came, and from the first again after the last. */
export async function nextWaiting(
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  after: string,
): Promise<string | undefined> {
  const [next] = await listDocuments(context, actor, 'proposed', after, 1)
  if (next) return next.id
  const [first] = await listDocuments(context, actor, 'proposed', undefined, 1)
  return first?.id === after ? undefined : first?.id
}

/** To the next that waits, saying what was done with this one; to the list where none waits. */
export async function onToNext(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
): Promise<FastifyReply> {
  const { context, actor } = request
  const next = await nextWaiting(context, actor, id)
  const to = next === undefined ? documentsPath(actor.county) : documentPath(actor.county, next)
  return reply.redirect(`${to}?done=${id}`, 303)
}

const DONE_WORDS: Readonly<Record<string, string>> = {
  confirmed: 'is confirmed.',
  'set-aside': 'is set aside.',
  proposed: 'has one permit confirmed. This is its next permit.',
}

export async function sayBefore(
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  id: string | undefined,
): Promise<{ readonly id: string; readonly says: string } | null> {
  if (id === undefined) return null
  const read = await readDocumentTaken(context, actor, id)
  if (!read.ok) return null
  const { fileName, state } = read.value.document
  return { id, says: `${fileName ?? 'The document before'} ${DONE_WORDS[state] ?? 'is done.'}` }
}
