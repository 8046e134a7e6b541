import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readInspectionBrief } from '../../../operations/parcels/read-inspection-brief.ts'
import { answered } from '../answer.ts'
import { parcelBasics, presentBasics } from '../parcels/shapes.ts'
import { parcelPath } from '../shapes/paths.ts'
import { systemQuery } from '../shapes/system.ts'
import { inspectionBrief, presentInspectionBrief } from './shapes.ts'

export const inspectionBriefs: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel/inspection-brief',
    {
      config: { access: ['reviewer', 'firm'] },
      schema: {
        summary: 'What to know before an inspection',
        description:
          'The record with the confidence of each line, typical values apart, where to look, what to bring, the most ' +
          'useful measurements first, and safety cautions.',
        tags: ['Parcels'],
        operationId: 'readInspectionBrief',
        params: parcelPath,
        querystring: systemQuery,
        response: { 200: z.object({ parcel: parcelBasics, brief: inspectionBrief }) },
      },
    },
    async ({ context, actor, params, query }) => {
      const read = answered(await readInspectionBrief(context, actor, params.parcel, query.system))
      return { parcel: presentBasics(read.parcel), brief: presentInspectionBrief(read.brief) }
    },
  )
}
