import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readCounty } from '../../../operations/counties/read-counties.ts'
import { answered } from '../../api/answer.ts'
import { problem } from '../../problem.ts'
import { presentLayers, presentPack } from './present.ts'
import { layersView, packView } from './view.ts'

const params = z.object({ county: z.string(), place: z.string(), topic: z.string() })

export const rules: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/rules',
    { config: { access: ['reviewer'] } },
    async ({ context, actor }, reply) => {
      const { name, place } = answered(await readCounty(context, actor.county))
      return reply.page({
        title: 'Rules',
        body: layersView(actor.county, name, presentLayers(context.book, place)),
      })
    },
  )

  app.get(
    '/counties/:county/rules/:place/:topic',
    { config: { access: ['reviewer'] }, schema: { params } },
    async ({ context, actor, params: { place, topic } }, reply) => {
      const pack = context.book.packs.get(`${place}/${topic}`)
      if (!pack) throw problem('not-found')
      return reply.page({ title: pack.title, body: packView(actor.county, pack, presentPack(pack)) })
    },
  )
}
