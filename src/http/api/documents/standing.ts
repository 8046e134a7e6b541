import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { moveCuts } from '../../../operations/documents/move-cuts.ts'
import { bringBack, setAside } from '../../../operations/documents/set-aside.ts'
import { tagRevision, versionIfSent } from '../../plugins/entity-tag.ts'
import { answered } from '../answer.ts'
import { idPath } from '../shapes/paths.ts'
import { documentInList, presentDocumentInList } from './shapes.ts'

const tags = ['Documents']
const config = { access: ['reviewer' as const], idempotent: true }
const IF_MATCH = 'With If-Match, only the version that was read is changed.'

/** What becomes of a paper that waits, beside being confirmed: set aside, brought back, cut into its permits. */
export const documentStanding: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/documents/:id/aside',
    {
      config,
      schema: {
        summary: 'Set a document aside, with a reason',
        description: `It leaves the list to confirm, and is kept. ${IF_MATCH}`,
        tags,
        operationId: 'setDocumentAside',
        params: idPath,
        body: z
          .strictObject({ reason: z.string().max(2_000) })
          .meta({ id: 'DocumentAside', examples: [{ reason: 'A receipt, no permit.' }] }),
        response: { 200: documentInList },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const asked = { document: params.id, version: versionIfSent(request), reason: body.reason }
      const moved = answered(await setAside(context, actor, asked))
      tagRevision(reply, moved.revision)
      return presentDocumentInList(moved)
    },
  )

  app.post(
    '/counties/:county/documents/:id/return',
    {
      config,
      schema: {
        summary: 'Put back a document that was set aside',
        description: `It is to be confirmed again, with the values read from it. ${IF_MATCH}`,
        tags,
        operationId: 'bringDocumentBack',
        params: idPath,
        body: z.strictObject({}).meta({ id: 'DocumentReturn', examples: [{}] }),
        response: { 200: documentInList },
      },
    },
    async (request, reply) => {
      const { context, actor, params } = request
      const asked = { document: params.id, version: versionIfSent(request) }
      const moved = answered(await bringBack(context, actor, asked))
      tagRevision(reply, moved.revision)
      return presentDocumentInList(moved)
    },
  )

  app.post(
    '/counties/:county/documents/:id/cuts',
    {
      config,
      schema: {
        summary: 'Set the pages on which the permits of a document start',
        description: `Each permit is read again from its own pages. Once one of them is confirmed, the split is final. ${IF_MATCH}`,
        tags,
        operationId: 'cutDocument',
        params: idPath,
        body: z
          .strictObject({
            begins: z
              .array(z.int('write whole numbers').min(1).max(10_000))
              .min(1)
              .max(100)
              .meta({ description: 'Counted from 1; the first permit always starts on page 1' }),
          })
          .meta({ id: 'DocumentCuts', examples: [{ begins: [1, 3] }] }),
        response: { 200: documentInList },
      },
    },
    async (request, reply) => {
      const { context, actor, params, body } = request
      const asked = { document: params.id, version: versionIfSent(request), begins: body.begins }
      const cut = answered(await moveCuts(context, actor, asked))
      tagRevision(reply, cut.revision)
      return presentDocumentInList(cut)
    },
  )
}
