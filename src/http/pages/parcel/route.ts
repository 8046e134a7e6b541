import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../../api/answer.ts'
import { searchPath } from '../layout/addresses.ts'
import { cameBy } from '../search/present.ts'
import { showFile } from './show-file.ts'
import { parcelStatus } from './status-view.ts'

const query = z.object({
  asked: z.string().max(200).catch('').default(''),
  by: z.string().max(20).catch('').default(''),
  done: z.guid().optional().catch(undefined),
})

const LETTERS = { method: 'POST', url: '/counties/:county/parcels/:parcel/letters' } as const

export const parcel: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel',
    {
      config: { access: ALL_ROLES },
      schema: { params: z.object({ county: z.string(), parcel: z.string() }), querystring: query },
    },
    async (request, reply) => {
      const { context, actor, params, query: came } = request
      const read = await readParcel(context, actor, params.parcel)
      // An old number that became several parcels: the search lists them.
      if (!read.ok && read.error.why === 'not-found' && read.error.says) {
        return reply.redirect(searchPath(actor.county, params.parcel), 303)
      }
      const found = answered(read)
      const how = cameBy(came.asked, came.by)
      if (actor.role !== 'agent') {
        const notice = came.done
          ? { says: 'Decided. The decision stands under its line.', fault: false }
          : null
        return showFile(request, reply, found.parcel.id, { came: how, notice })
      }
      const letters = app.hasRoute(LETTERS)
      return reply.page({
        title: `${found.parcel.number}: status`,
        body: parcelStatus(found, { county: actor.county, oldNumbers: found.oldNumbers, came: how, letters }),
      })
    },
  )
}
