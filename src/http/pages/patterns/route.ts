import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { readCounty } from '../../../operations/counties/read-counties.ts'
import { findPatterns } from '../../../operations/patterns/find-patterns.ts'
import { answered } from '../../api/answer.ts'
import { presentPatterns } from './present.ts'
import { patternsView } from './view.ts'

export const patterns: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/patterns',
    { config: { access: ['reviewer'] } },
    async ({ context, actor }, reply) => {
      const { name } = answered(await readCounty(context, actor.county))
      const found = await findPatterns(context, actor)
      return reply.page({
        title: 'Patterns across the county',
        body: patternsView({ id: actor.county, name }, presentPatterns(actor.county, found)),
      })
    },
  )
}
