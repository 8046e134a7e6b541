import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import {
  type Delivery,
  type DeliveryKey,
  deliveriesOf,
  type NotificationKept,
  notificationsKept,
  sendAgain,
} from '../../store/deliveries.ts'
import {
  endSubscription,
  liveOnParcel,
  type Subscription,
  subscriptionById,
  subscriptionsBefore,
} from '../../store/subscriptions.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, notFound } from '../refusal.ts'

type Context = Pick<OperationContext, 'database' | 'clock'>

/** Those of the asker's organization, newest first. */
export const listSubscriptions = (
  context: Context,
  actor: Person,
  before: string | undefined,
  most: number,
): Promise<readonly Subscription[]> =>
  transact(context.database, actor, (tx) => subscriptionsBefore(tx, actor.county, before, most))

/** Those of the asker's organization that tell of this one parcel, by its id, and were not ended. */
export const subscriptionsOnParcel = (
  context: Pick<Context, 'database'>,
  actor: Person,
  parcel: string,
): Promise<readonly Subscription[]> =>
  transact(context.database, actor, (tx) => liveOnParcel(tx, actor.county, parcel))

/** As many as one reads at a time; older ones are in the lists of messages. */
const MOST_NOTIFICATIONS = 200

/** The changes kept for the caller's organization, newest first. */
export const readNotifications = (
  context: Pick<Context, 'database'>,
  actor: Person,
): Promise<readonly NotificationKept[]> =>
  transact(context.database, actor, (tx) => notificationsKept(tx, actor.county, MOST_NOTIFICATIONS))

/** Ends it; what still waits for it is not sent any more. */
export const unsubscribe = (context: Context, actor: Person, id: string): Promise<Answer<Subscription>> =>
  transact(context.database, actor, async (tx) => {
    const { county } = actor
    if (!(await subscriptionById(tx, county, id))) return notFound()
    await endSubscription(tx, county, id, { at: context.clock(), because: null })
    return ok((await subscriptionById(tx, county, id))!)
  })

export type DeliveriesAsked = {
  readonly subscription: string
  readonly state: Delivery['state'] | undefined
  readonly before: DeliveryKey | undefined
  readonly most: number
}

/** Its messages, newest first: those that wait, were taken, and were given up. */
export const listDeliveries = (
  context: Context,
  actor: Person,
  { subscription, ...asked }: DeliveriesAsked,
): Promise<Answer<readonly Delivery[]>> =>
  transact(context.database, actor, async (tx) => {
    if (!(await subscriptionById(tx, actor.county, subscription))) return notFound()
    return ok(await deliveriesOf(tx, actor.county, subscription, asked))
  })

/** Sends a message again that was given up, or taken before. */
export const resendDelivery = (
  context: Context,
  actor: Person,
  asked: { readonly subscription: string; readonly delivery: string },
): Promise<Answer<null>> =>
  transact(context.database, actor, async (tx) => {
    const subscription = await subscriptionById(tx, actor.county, asked.subscription)
    if (!subscription) return notFound()
    if (subscription.address === null)
      return conflict('This subscription has no webhook. Read its messages here.')
    if (subscription.endedAt) return conflict('This subscription has ended. Make a new one.')
    const again = await sendAgain(tx, actor.county, asked.subscription, asked.delivery, context.clock())
    return again ? ok(null) : notFound('There is no such message, or it is already waiting to be sent.')
  })
