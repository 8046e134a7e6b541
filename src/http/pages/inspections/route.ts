import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { listOwnInspections } from '../../../operations/findings/list-own-inspections.ts'
import { onThisPhoneOf } from '../../inspection/server/on-this-phone.ts'
import { presentInspections } from './present.ts'
import { inspectionsView } from './view.ts'

const MOST = 100

export const inspections: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/counties/:county/inspections',
    { config: { access: ['firm'] } },
    async ({ context, actor }, reply) => {
      const inspected = presentInspections(await listOwnInspections(context, actor, MOST))
      const onThisPhone = await onThisPhoneOf(actor.account)
      return reply.page({ title: 'Inspections', body: inspectionsView(actor.county, inspected, onThisPhone) })
    },
  )
}
