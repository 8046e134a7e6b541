import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { moveCuts } from '../../../operations/documents/move-cuts.ts'
import { listDocuments } from '../../../operations/documents/read-document.ts'
import { bringBack, setAside } from '../../../operations/documents/set-aside.ts'
import { DOCUMENT_STATES } from '../../../store/documents.ts'
import { answered } from '../../api/answer.ts'
import { documentPath } from './addresses.ts'
import { confirmPosted } from './confirm-posted.ts'
import { listView } from './list-view.ts'
import { onToNext, sayBefore, showDocument } from './show-document.ts'
import { typedBy, versionIn } from './typed.ts'

const config = { access: ['reviewer' as const] }
const params = z.object({ county: z.string(), id: z.guid('is not an id') })
const LISTED = 50

/** The documents that came in, and the page where each is confirmed against its scan. */
export const documentPages: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/documents',
    {
      config,
      schema: {
        querystring: z.object({
          state: z.enum(DOCUMENT_STATES).catch('proposed'),
          after: z.guid().optional().catch(undefined),
          done: z.guid().optional().catch(undefined),
        }),
      },
    },
    async ({ context, actor, query: { state, after, done } }, reply) => {
      const rows = await listDocuments(context, actor, state, after, LISTED + 1)
      const documents = rows.slice(0, LISTED)
      const next = rows.length > LISTED ? documents.at(-1)!.id : null
      const before = await sayBefore(context, actor, done)
      const body = listView({ county: actor.county, state, documents, next, before })
      return reply.page({ title: 'Documents', body })
    },
  )

  app.get(
    '/counties/:county/documents/:id',
    {
      config,
      schema: {
        params,
        querystring: z.object({
          permit: z.coerce.number().int().min(0).max(1_000).optional().catch(undefined),
          done: z.guid().optional().catch(undefined),
        }),
      },
    },
    async (request, reply) => {
      const { permit, done } = request.query
      return showDocument(request, reply, request.params.id, { permit, before: done })
    },
  )

  app.post(
    '/counties/:county/documents/:id/transcription',
    { config, schema: { params } },
    (request, reply) => confirmPosted(request, reply, request.params.id),
  )

  app.post(
    '/counties/:county/documents/:id/aside',
    { config, schema: { params } },
    async (request, reply) => {
      const { context, actor, params: at, body } = request
      const typed = typedBy(body)
      const reason = typed.reason ?? ''
      const made = await setAside(context, actor, { document: at.id, version: versionIn(typed), reason })
      if (made.ok) return onToNext(request, reply, at.id)
      const { why } = made.error
      if (why !== 'invalid' && why !== 'stale' && why !== 'conflict') return answered(made)
      const fault =
        made.error.why === 'invalid'
          ? 'Enter a reason.'
          : 'Someone else changed this document while you had it open. It was not set aside. Please check it again.'
      return showDocument(request, reply, at.id, {
        aside: { typed: reason, fault },
        status: why === 'invalid' ? 422 : 409,
      })
    },
  )

  app.post(
    '/counties/:county/documents/:id/return',
    { config, schema: { params } },
    async (request, reply) => {
      const { context, actor, params: at, body } = request
      const made = await bringBack(context, actor, { document: at.id, version: versionIn(typedBy(body)) })
      // Somebody else was faster, or a button was pressed twice: the page says how it stands.
      if (!made.ok && made.error.why !== 'stale' && made.error.why !== 'conflict') return answered(made)
      return reply.redirect(documentPath(actor.county, at.id), 303)
    },
  )

  app.post('/counties/:county/documents/:id/cuts', { config, schema: { params } }, async (request, reply) => {
    const { context, actor, params: at, body } = request
    const typed = typedBy(body)
    const written = typed.begins ?? ''
    const begins = written.split(/[\s,;]+/).filter((it) => it !== '')
    const again = (fault: string, status: 409 | 422) =>
      showDocument(request, reply, at.id, { cuts: { typed: written, fault }, status })
    if (begins.length === 0 || begins.some((it) => !/^\d{1,5}$/.test(it))) {
      return again('Enter page numbers with commas between them, for example 1, 3, 4.', 422)
    }
    const asked = { document: at.id, version: versionIn(typed), begins: begins.map(Number) }
    const moved = await moveCuts(context, actor, asked)
    if (moved.ok) return reply.redirect(documentPath(actor.county, at.id), 303)
    const { error } = moved
    if (error.why === 'invalid')
      return again(`${error.issues.map(({ message }) => message).join('. ')}.`, 422)
    if (error.why === 'conflict') return again(error.says, 409)
    if (error.why !== 'stale') return answered(moved)
    return again('Someone else changed this document while you had it open. The split was not changed.', 409)
  })
}
