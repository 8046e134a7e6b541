import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import {
  changesTold,
  subscriptionsOnParcel,
  unsubscribe,
} from '../../../operations/subscriptions/read-subscriptions.ts'
import { subscribe } from '../../../operations/subscriptions/subscribe.ts'
import { answered } from '../../api/answer.ts'
import { typed } from '../account/typed.ts'
import { parcelPath, searchPath } from '../layout/addresses.ts'
import { showStatus } from '../parcel/show-status.ts'
import { presentChange } from './present.ts'
import { changesView, TOLD } from './view.ts'

const config = { access: ['agent'] } as const

/** Asks to be told when the status of a parcel changes, and ends it, from the page of that status; what was told here. */
export const subscriptionPages: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/parcels/:parcel/subscriptions',
    { config, schema: { params: z.object({ county: z.string(), parcel: z.string() }) } },
    async (request, reply) => {
      const { context, actor, params, body, server } = request
      const isHere = typed(body, 'here') === 'yes'
      const address = isHere ? '' : typed(body, 'address').trim()
      const again = (fault: string, status: number) =>
        showStatus(request, reply, params.parcel, { told: { typed: address, fault }, status })
      const { parcel } = answered(await readParcel(context, actor, params.parcel))
      const live = await subscriptionsOnParcel(context, actor, parcel.id)
      const toParcel = `${parcelPath(actor.county, parcel.number)}#${TOLD}`
      if (isHere && live.some((it) => it.address === null)) return reply.redirect(toParcel, 303)
      // Pressed twice, or asked by somebody else of the office.
      if (URL.canParse(address) && live.some((it) => it.address === new URL(address).href)) {
        const lost = 'This address is told already. If its key was lost, end it above and ask anew.'
        return again(lost, 409)
      }
      const asked = { address: isHere ? null : address, parcel: parcel.id }
      const made = await subscribe(context, actor, asked, { vault: server.door.vault })
      if (made.ok && isHere) return reply.redirect(toParcel, 303)
      if (made.ok) {
        return showStatus(request, reply, params.parcel, { told: { secret: made.value.secret } })
      }
      const { error } = made
      if (error.why === 'conflict') return again(error.says, 409)
      if (error.why !== 'invalid') return answered(made)
      return again(
        error.issues
          .map(({ pointer, message }) => (pointer === '/address' ? `The address ${message}.` : message))
          .join(' '),
        422,
      )
    },
  )

  app.get(
    '/counties/:county/changes',
    { config, schema: { params: z.object({ county: z.string() }) } },
    async ({ context, actor }, reply) => {
      const told = await changesTold(context, actor)
      return reply.page({ title: 'What changed', body: changesView(actor.county, told.map(presentChange)) })
    },
  )

  app.post(
    '/counties/:county/subscriptions/:id/end',
    { config, schema: { params: z.object({ county: z.string(), id: z.guid() }) } },
    async ({ context, actor, params }, reply) => {
      const { parcelNumber } = answered(await unsubscribe(context, actor, params.id))
      const { county } = actor
      const back = parcelNumber === null ? searchPath(county) : `${parcelPath(county, parcelNumber)}#${TOLD}`
      return reply.redirect(back, 303)
    },
  )
}
