import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import {
  listDeliveries,
  listSubscriptions,
  resendDelivery,
  unsubscribe,
} from '../../../operations/subscriptions/read-subscriptions.ts'
import { subscribe } from '../../../operations/subscriptions/subscribe.ts'
import { line } from '../../../reading/entry/fields.ts'
import { DELIVERY_STATES, type Delivery } from '../../../store/deliveries.ts'
import type { Subscription } from '../../../store/subscriptions.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../plugins/paging.ts'
import { answered } from '../answer.ts'
import { id, instant } from '../shapes/basics.ts'
import { countyPath, idPath } from '../shapes/paths.ts'

const tags = ['Subscriptions']

const subscription = z
  .object({
    id,
    address: z.string().nullable().meta({ description: 'Null: no webhook; read the messages here' }),
    parcel: z.string().nullable().meta({ description: 'Null: every parcel of the county' }),
    madeAt: instant,
    endedAt: instant.nullable(),
    endedBecause: z.string().nullable(),
  })
  .meta({ id: 'Subscription', description: 'Somebody who is told when a status changes' })

const present = (it: Subscription): z.output<typeof subscription> => ({
  id: it.id,
  address: it.address,
  parcel: it.parcelNumber,
  madeAt: it.madeAt.toISOString(),
  endedAt: it.endedAt?.toISOString() ?? null,
  endedBecause: it.endedBecause,
})

const delivery = z
  .object({
    id: id.meta({ description: 'Sent as webhook-id; the same in every try' }),
    state: z.enum(DELIVERY_STATES),
    tries: z.int(),
    nextAt: instant.nullable().meta({ description: 'When it is tried next' }),
    says: z.string().nullable().meta({ description: 'The result of the last try' }),
    message: z.string().meta({ description: 'What is sent, to the byte' }),
    madeAt: instant,
  })
  .meta({ id: 'Delivery', description: 'One message to one subscriber' })

const presentDelivery = (it: Delivery): z.output<typeof delivery> => ({
  id: it.id,
  state: it.state,
  tries: it.tries,
  nextAt: it.state === 'waiting' ? it.nextAt.toISOString() : null,
  says: it.says,
  message: it.body,
  madeAt: it.madeAt.toISOString(),
})

const place = z.tuple([z.iso.datetime(), z.guid()])

export const subscriptions: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/counties/:county/subscriptions',
    {
      // The answer holds a secret, so it is not kept to be given again: no Idempotency-Key here.
      config: { access: ALL_ROLES },
      schema: {
        summary: 'Get notified when the status of a parcel changes',
        description:
          'A webhook: a POST to your address, signed as in Standard Webhooks (webhook-id, webhook-timestamp, ' +
          'webhook-signature). A failed delivery is retried for three days, then kept, and can be sent again. Only https ' +
          'addresses on the Internet. The secret is shown only once. Without an address, read the messages here.',
        tags,
        operationId: 'subscribe',
        params: countyPath,
        body: z
          .strictObject({
            address: z
              .string()
              .min(1, 'write an address')
              .max(2000, 'at most 2000 characters')
              .nullable()
              .default(null)
              .meta({
                description: 'Leave out to get no webhook and read the messages of the subscription instead',
              }),
            parcel: line(80).nullable().default(null).meta({
              description: 'Which parcel; leave out for every parcel of the county (reviewers only)',
            }),
          })
          .meta({
            id: 'SubscriptionEntry',
            examples: [{ address: 'https://example.org/hooks/status', parcel: '07-0412-0031' }],
          }),
        response: {
          201: z.object({
            subscription,
            secret: z.string().nullable().meta({ description: 'Null where nothing is sent' }),
          }),
        },
      },
    },
    async ({ context, actor, body, server }, reply) => {
      const made = answered(await subscribe(context, actor, body, { vault: server.door.vault }))
      reply.code(201).header('cache-control', 'no-store')
      return { subscription: present(made.subscription), secret: made.secret }
    },
  )

  app.get(
    '/counties/:county/subscriptions',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'The subscriptions of your organization, newest first',
        tags,
        operationId: 'listSubscriptions',
        params: countyPath,
        querystring: z.object(pageQuery),
        response: { 200: pageOf(subscription) },
      },
    },
    async (request, reply) => {
      const { context, actor, query } = request
      const rows = await listSubscriptions(context, actor, cursorFrom(request, z.guid()), query.limit + 1)
      return pageFrom(request, reply, rows, (row) => row.id, present)
    },
  )

  app.delete(
    '/counties/:county/subscriptions/:id',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'End a subscription',
        tags,
        operationId: 'unsubscribe',
        params: idPath,
        response: { 200: subscription },
      },
    },
    async ({ context, actor, params }) => present(answered(await unsubscribe(context, actor, params.id))),
  )

  app.get(
    '/counties/:county/subscriptions/:id/deliveries',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'The messages of a subscription, newest first',
        description: 'With state=dead: those that could not be delivered.',
        tags,
        operationId: 'listDeliveries',
        params: idPath,
        querystring: z.object({
          ...pageQuery,
          state: z
            .enum(DELIVERY_STATES)
            .optional()
            .meta({ examples: ['dead'] }),
        }),
        response: { 200: pageOf(delivery) },
      },
    },
    async (request, reply) => {
      const { context, actor, params, query } = request
      const cursor = cursorFrom(request, place)
      const before = cursor && { madeAt: new Date(cursor[0]), id: cursor[1] }
      const asked = { subscription: params.id, state: query.state, before, most: query.limit + 1 }
      const rows = answered(await listDeliveries(context, actor, asked))
      return pageFrom(request, reply, rows, (row) => [row.madeAt.toISOString(), row.id], presentDelivery)
    },
  )

  app.post(
    '/counties/:county/subscriptions/:id/deliveries/:delivery/resend',
    {
      config: { access: ALL_ROLES },
      schema: {
        summary: 'Send a message again',
        tags,
        operationId: 'resendDelivery',
        params: idPath.extend({ delivery: z.guid('is not an id') }),
        response: { 202: z.object({ delivery: id }) },
      },
    },
    async ({ context, actor, params }, reply) => {
      const { id: own, delivery: message } = params
      answered(await resendDelivery(context, actor, { subscription: own, delivery: message }))
      reply.code(202)
      return { delivery: message }
    },
  )
}
