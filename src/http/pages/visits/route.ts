import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { listOwnVisits } from '../../../operations/findings/list-own-visits.ts'
import { onThisPhoneOf } from '../visit/server/on-this-phone.ts'
import { presentVisits } from './present.ts'
import { visitsView } from './view.ts'

const MOST = 100

export const visits: FastifyPluginAsyncZod = async (app) => {
  app.get('/counties/:county/visits', { config: { access: ['firm'] } }, async ({ context, actor }, reply) => {
    const visited = presentVisits(await listOwnVisits(context, actor, MOST))
    const onThisPhone = await onThisPhoneOf(actor.account)
    return reply.page({ title: 'Visits', body: visitsView(actor.county, visited, onThisPhone) })
  })
}
