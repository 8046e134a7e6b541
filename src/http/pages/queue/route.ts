import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { listDiscrepancies } from '../../../operations/discrepancies/list-discrepancies.ts'
import { queueKeyOf } from '../../../store/discrepancies.ts'
import { answered } from '../../api/answer.ts'
import { cursorFrom, pageFrom } from '../../plugins/paging.ts'
import { queuePath } from '../layout/addresses.ts'
import { filterOf, queueQuery } from './filter.ts'
import { presentQueue } from './present.ts'
import { queueView } from './view.ts'

const place = z.tuple([z.int().min(1).max(3), z.iso.datetime(), z.guid()])

export const queue: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/queue',
    { config: { access: ['reviewer'] }, schema: { querystring: queueQuery } },
    async (request, reply) => {
      const { context, actor, query } = request
      const cursor = cursorFrom(request, place)
      const after = cursor && { rank: cursor[0], raisedAt: new Date(cursor[1]), id: cursor[2] }
      const found = answered(await listDiscrepancies(context, actor, filterOf(query), after, query.limit + 1))
      const keyOf = (row: (typeof found.rows)[number]) => {
        const { rank, raisedAt, id } = queueKeyOf(row)
        return [rank, raisedAt.toISOString(), id]
      }
      const { items: rows, next } = pageFrom(request, reply, found.rows, keyOf, (row) => row)
      const path = queuePath(actor.county)
      const page = presentQueue({ ...found, rows }, query, path, context.clock())
      return reply.page({
        title: 'Queue',
        modules: ['queue-keys.js'],
        body: queueView(page, { county: actor.county, path, query, next }),
      })
    },
  )
}
