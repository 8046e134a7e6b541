import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { languageOf } from '../language.ts'
import { cameBy } from '../search/present.ts'
import { showFile } from './show-file.ts'
import { showStatus } from './show-status.ts'

const query = z.object({
  asked: z.string().max(200).catch('').default(''),
  by: z.string().max(20).catch('').default(''),
  done: z.guid().optional().catch(undefined),
})

export const parcel: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel',
    {
      config: { access: ALL_ROLES },
      schema: { params: z.object({ county: z.string(), parcel: z.string() }), querystring: query },
    },
    async (request, reply) => {
      const { actor, params, query: came } = request
      if (actor.role !== 'agent') {
        const notice = came.done ? { says: 'Your decision is saved. It is shown below.', fault: false } : null
        return showFile(request, reply, params.parcel, {
          came: cameBy(came.asked, came.by, 'en'),
          notice,
        })
      }
      return showStatus(request, reply, params.parcel, {
        came: cameBy(came.asked, came.by, languageOf(request)),
      })
    },
  )
}
