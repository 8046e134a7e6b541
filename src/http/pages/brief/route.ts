import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readInspectionBrief } from '../../../operations/parcels/read-inspection-brief.ts'
import { answered } from '../../api/answer.ts'
import { briefView } from './view.ts'

const params = z.object({ county: z.string(), parcel: z.string() })

export const brief: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel/brief',
    { config: { access: ['firm', 'reviewer'] }, schema: { params } },
    async ({ context, actor, params: asked }, reply) => {
      const { parcel, brief: read } = answered(await readInspectionBrief(context, actor, asked.parcel))
      return reply.page({
        title: `Inspection brief ${parcel.number}`,
        body: briefView(actor.county, parcel, read),
      })
    },
  )
}
