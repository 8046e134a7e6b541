import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { readCounty } from '../../../operations/counties/read-counties.ts'
import { readGlance } from '../../../operations/counties/read-glance.ts'
import { answered } from '../../api/answer.ts'
import { presentGlance } from './present.ts'
import { glanceView } from './view.ts'

export const glance: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/glance',
    { config: { access: ['reviewer'] } },
    async ({ context, actor }, reply) => {
      const { name } = answered(await readCounty(context, actor.county))
      const counted = await readGlance(context, actor)
      return reply.page({
        title: 'County at a glance',
        body: glanceView({ id: actor.county, name }, presentGlance(counted), counted.at),
      })
    },
  )
}
