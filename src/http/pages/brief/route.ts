import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readInspectionBrief } from '../../../operations/parcels/read-inspection-brief.ts'
import { answered } from '../../api/answer.ts'
import { parcelPath } from '../layout/addresses.ts'
import { briefView } from './view.ts'

const params = z.object({ county: z.string(), parcel: z.string() })

export const brief: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel/brief',
    { config: { access: ['firm', 'reviewer'] }, schema: { params } },
    async ({ context, actor, params: asked }, reply) => {
      const answer = await readInspectionBrief(context, actor, asked.parcel)
      // Of several systems each has its own: they are listed with the file.
      if (!answer.ok && answer.error.why === 'invalid')
        return reply.redirect(parcelPath(actor.county, asked.parcel), 303)
      const { parcel, brief: read } = answered(answer)
      return reply.page({
        title: `Inspection brief ${parcel.number}`,
        body: briefView(actor.county, parcel, read),
      })
    },
  )
}
