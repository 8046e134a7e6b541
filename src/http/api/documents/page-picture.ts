import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { namePage, showPage } from '../../../operations/documents/show-page.ts'
import { answered } from '../answer.ts'
import { idPath } from '../shapes/paths.ts'

export const pagePictures: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/documents/:id/pages/:page(^\\d{1,5}$).png',
    {
      config: { access: ['reviewer'] },
      schema: {
        summary: 'A page of a document as an image',
        description: 'To check readings against: boxes are fractions of this image.',
        tags: ['Documents'],
        operationId: 'showDocumentPage',
        produces: ['image/png'],
        params: idPath.extend({
          page: z.coerce
            .number()
            .int()
            .min(1)
            .meta({ description: 'Counted from 1', examples: [1] }),
        }),
        querystring: z.object({
          width: z.coerce
            .number('write a whole number')
            .int('write a whole number')
            .min(100)
            .max(3000)
            .default(1200)
            .meta({ description: 'Of the picture, in pixels', examples: [1200] }),
        }),
      },
    },
    async ({ context, actor, params, query, headers }, reply) => {
      const named = answered(await namePage(context, actor, params.id, params.page, query.width))
      const etag = `"${named.name}"`
      reply.header('etag', etag).header('cache-control', 'private, max-age=31536000, immutable')
      // Looked at before it is drawn: drawing is what costs.
      if (headers['if-none-match']?.includes(etag)) return reply.code(304).send()
      return reply.type('image/png').send(answered(await showPage(named, params.page, query.width)))
    },
  )
}
