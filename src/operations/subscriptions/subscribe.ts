import { randomBytes } from 'node:crypto'
import { ok } from '../../base/result.ts'
import { checkTarget, INTERNET, type Outside } from '../../net/target.ts'
import type { Vault } from '../../store/access/vault.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import {
  countLive,
  insertSubscription,
  type Subscription,
  subscriptionById,
} from '../../store/subscriptions.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { mayHaveAnother } from '../quotas.ts'
import { type Answer, conflict, invalid, notFound } from '../refusal.ts'

/** Without an address it is kept, to be read on a page of the service. */
export type SubscriptionAsked = { readonly address: string | null; readonly parcel: string | null }

/** Its key is shown only now; only what the vault has sealed is kept. Without an address there is none. */
export type Subscribed = { readonly subscription: Subscription; readonly secret: string | null }

/** Enough for an office; an organization that wants every parcel asks for the county as one. */
const MOST_LIVE = 500
const KEY_BYTES = 32

/** What the key of a subscription is sealed for: that of another does not open in its place. */
export const sealedFor = (county: string, id: string): string => `webhook ${county} ${id}`

/** Subscribes to the status of a parcel or, for reviewers, of every parcel in the county. */
export async function subscribe(
  context: OperationContext,
  actor: Person,
  { address, parcel: asked }: SubscriptionAsked,
  { vault, outside = INTERNET }: { readonly vault: Vault; readonly outside?: Outside },
): Promise<Answer<Subscribed>> {
  const target = address === null ? null : await checkTarget(address, outside)
  if (target && !target.ok) return invalid({ pointer: '/address', message: target.error })
  if (asked === null && actor.role !== 'reviewer')
    return invalid({ pointer: '/parcel', message: 'name a parcel: only reviewers can follow all of them' })
  return transact(context.database, actor, async (tx) => {
    const { county, organization, account } = actor
    const parcel = asked === null ? null : await parcelAsked(tx, county, asked)
    if (parcel && !parcel.ok)
      return invalid({ pointer: '/parcel', message: `there is no parcel ${asked} in this county` })
    if ((await countLive(tx, county)) >= MOST_LIVE)
      return conflict(`Your office already has ${MOST_LIVE} subscriptions. Stop some first.`)
    const may = await mayHaveAnother(tx, context, 'subscriptions')
    if (!may.ok) return may
    const id = context.newId()
    // The form that Standard Webhooks gives a symmetric key: a prefix, and 24 to 64 random bytes in base64.
    const secret = target && `whsec_${randomBytes(KEY_BYTES).toString('base64')}`
    await insertSubscription(tx, county, {
      id,
      organization,
      account,
      address: target?.value.url.href ?? null,
      secret: secret === null ? null : vault.seal(secret, sealedFor(county, id)),
      parcel: parcel?.value.id ?? null,
      madeAt: context.clock(),
    })
    const subscription = await subscriptionById(tx, county, id)
    return subscription ? ok({ subscription, secret }) : notFound()
  })
}
