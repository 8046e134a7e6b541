import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { prepareInspection } from '../../operations/findings/prepare-inspection.ts'
import { answered } from '../api/answer.ts'
import { inspectionPath } from './addresses.ts'
import { sendChoice } from './server/choice.ts'
import { inspectionFiles } from './server/files-route.ts'
import { sendInspection, sendSent } from './server/page.ts'
import { takePhotoForm } from './server/photo-form.ts'
import { takeStep } from './server/take-step.ts'

const params = z.object({ county: z.string(), parcel: z.string() })
const query = z.object({ step: z.string().max(120).default('start') })
const access = ['firm'] as const

/**
 * The findings form, one component at a time. A plain form that works by itself; where scripts run, the same views are
 * made on the phone, from what it keeps, with or without a network.
 */
export const inspection: FastifyPluginAsyncZod = async (app) => {
  await app.register(inspectionFiles)

  app.get(
    '/counties/:county/parcels/:parcel/inspection',
    { config: { access }, schema: { params, querystring: query } },
    async (request, reply) => {
      const { context, actor, params: at, query: asked } = request
      const answer = await prepareInspection(context, actor, at.parcel)
      if (!answer.ok && answer.error.why === 'invalid') return sendChoice(request, reply, at.parcel)
      const prepared = answered(answer)
      // One address for a parcel, however its number was spelled: the phone keeps pages and drafts by it.
      const own = inspectionPath(actor.county, prepared.parcel.number, asked.step)
      if (at.parcel !== prepared.parcel.number) return reply.redirect(own, 303)
      return asked.step === 'sent' && prepared.submitted && !prepared.draft
        ? sendSent(request, reply, prepared)
        : sendInspection(request, reply, prepared, { step: asked.step })
    },
  )

  app.post(
    '/counties/:county/parcels/:parcel/inspection',
    { config: { access }, schema: { params } },
    async (request, reply) => takeStep(request, reply, request.params.parcel),
  )

  app.post(
    '/counties/:county/parcels/:parcel/inspection/photos',
    { config: { access }, schema: { params } },
    async (request, reply) => takePhotoForm(request, reply, request.params.parcel),
  )
}
