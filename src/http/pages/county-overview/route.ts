import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { readCounty } from '../../../operations/counties/read-counties.ts'
import { readCountyFigures } from '../../../operations/counties/read-county-figures.ts'
import { answered } from '../../api/answer.ts'
import { presentFigures } from './present.ts'
import { overviewView } from './view.ts'

export const countyOverview: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/overview',
    { config: { access: ['reviewer'] } },
    async ({ context, actor }, reply) => {
      const { name } = answered(await readCounty(context, actor.county))
      const counted = await readCountyFigures(context, actor)
      return reply.page({
        title: 'County overview',
        body: overviewView({ id: actor.county, name }, presentFigures(counted), counted.at),
      })
    },
  )
}
