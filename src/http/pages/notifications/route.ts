import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import {
  readNotifications,
  subscriptionsOnParcel,
  unsubscribe,
} from '../../../operations/subscriptions/read-subscriptions.ts'
import { subscribe } from '../../../operations/subscriptions/subscribe.ts'
import { inLanguage } from '../../../words/copy.ts'
import { answered } from '../../api/answer.ts'
import { typed } from '../account/typed.ts'
import { languageOf } from '../language.ts'
import { parcelPath, searchPath } from '../layout/addresses.ts'
import { showStatus } from '../parcel/show-status.ts'
import { CHANGES, NOTIFICATION_FAULTS } from './copy.ts'
import { presentChange } from './present.ts'
import { changesView, NOTIFICATIONS } from './view.ts'

const config = { access: ['agent'] } as const

/** Notifications when the status of a parcel changes: started and stopped on the page of that status, and listed. */
export const notificationPages: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/parcels/:parcel/subscriptions',
    { config, schema: { params: z.object({ county: z.string(), parcel: z.string() }) } },
    async (request, reply) => {
      const { context, actor, params, body, server } = request
      const faults = inLanguage(NOTIFICATION_FAULTS, languageOf(request))
      const isHere = typed(body, 'here') === 'yes'
      const address = isHere ? '' : typed(body, 'address').trim()
      const again = (fault: string, status: number) =>
        showStatus(request, reply, params.parcel, { notifications: { typed: address, fault }, status })
      const { parcel } = answered(await readParcel(context, actor, params.parcel))
      const live = await subscriptionsOnParcel(context, actor, parcel.id)
      const toParcel = `${parcelPath(actor.county, parcel.number)}#${NOTIFICATIONS}`
      if (isHere && live.some((it) => it.address === null)) return reply.redirect(toParcel, 303)
      // Pressed twice, or added by somebody else in the office.
      if (URL.canParse(address) && live.some((it) => it.address === new URL(address).href)) {
        return again(faults.known, 409)
      }
      const asked = { address: isHere ? null : address, parcel: parcel.id }
      const made = await subscribe(context, actor, asked, { vault: server.door.vault })
      if (made.ok && isHere) return reply.redirect(toParcel, 303)
      if (made.ok) {
        return showStatus(request, reply, params.parcel, { notifications: { secret: made.value.secret } })
      }
      const { error } = made
      if (error.why === 'conflict') return again(faults.refused(error.says), 409)
      if (error.why !== 'invalid') return answered(made)
      return again(
        error.issues
          .map(({ pointer, message }) => (pointer === '/address' ? faults.address(message) : message))
          .join(' '),
        422,
      )
    },
  )

  app.get(
    '/counties/:county/changes',
    { config, schema: { params: z.object({ county: z.string() }) } },
    async (request, reply) => {
      const { context, actor } = request
      const language = languageOf(request)
      const kept = await readNotifications(context, actor)
      const body = changesView(actor.county, kept.map(presentChange), language)
      return reply.page({ title: CHANGES.title[language], language, body })
    },
  )

  app.post(
    '/counties/:county/subscriptions/:id/end',
    { config, schema: { params: z.object({ county: z.string(), id: z.guid() }) } },
    async ({ context, actor, params }, reply) => {
      const { parcelNumber } = answered(await unsubscribe(context, actor, params.id))
      const { county } = actor
      const back =
        parcelNumber === null ? searchPath(county) : `${parcelPath(county, parcelNumber)}#${NOTIFICATIONS}`
      return reply.redirect(back, 303)
    },
  )
}
