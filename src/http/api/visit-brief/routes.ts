import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readVisitBrief } from '../../../operations/parcels/read-visit-brief.ts'
import { answered } from '../answer.ts'
import { parcelBasics, presentBasics } from '../parcels/shapes.ts'
import { parcelPath } from '../shapes/paths.ts'
import { presentVisitBrief, visitBrief } from './shapes.ts'

export const visitBriefs: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/parcels/:parcel/visit-brief',
    {
      config: { access: ['reviewer', 'firm'] },
      schema: {
        summary: 'What to know before a visit',
        description:
          'The record with how sure each line is, expectations apart from it, where to look, what to bring, the measurements ranked by what each would settle, and the cautions.',
        tags: ['Parcels'],
        operationId: 'readVisitBrief',
        params: parcelPath,
        response: { 200: z.object({ parcel: parcelBasics, brief: visitBrief }) },
      },
    },
    async ({ context, actor, params }) => {
      const read = answered(await readVisitBrief(context, actor, params.parcel))
      return { parcel: presentBasics(read.parcel), brief: presentVisitBrief(read.brief) }
    },
  )
}
