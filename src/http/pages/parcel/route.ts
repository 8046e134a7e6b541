import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { listLetters } from '../../../operations/letters/read-letter.ts'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../../api/answer.ts'
import { searchPath } from '../layout/addresses.ts'
import { presentLetters } from '../letter/present.ts'
import { cameBy } from '../search/present.ts'
import { isSeveral, showFile } from './show-file.ts'
import { parcelStatus } from './status-view.ts'

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
      const { context, actor, params, query: came } = request
      const how = cameBy(came.asked, came.by)
      if (actor.role !== 'agent') {
        const notice = came.done
          ? { says: 'Decided. The decision stands under its line.', fault: false }
          : null
        return showFile(request, reply, params.parcel, { came: how, notice })
      }
      const read = await readParcel(context, actor, params.parcel)
      if (isSeveral(read)) return reply.redirect(searchPath(actor.county, params.parcel), 303)
      const found = answered(read)
      const { letters } = answered(await listLetters(context, actor, found.parcel.id))
      return reply.page({
        title: `${found.parcel.number}: status`,
        body: parcelStatus(found, {
          county: actor.county,
          oldNumbers: found.oldNumbers,
          came: how,
          letters: presentLetters(letters, actor.role),
        }),
      })
    },
  )
}
