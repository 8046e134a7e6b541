import { Webhook } from 'standardwebhooks'
import type { Result } from '../../base/result.ts'
import { postTo, type Received } from '../../net/post-to.ts'
import { INTERNET, type Outside } from '../../net/target.ts'
import type { Vault } from '../../store/access/vault.ts'
import { serviceIn } from '../../store/database/actor.ts'
import { transact, withoutCounty } from '../../store/database/transact.ts'
import { countiesDue, type DeliveryTaken, noteDelivery, takeDue } from '../../store/deliveries.ts'
import { endSubscription } from '../../store/subscriptions.ts'
import type { OperationContext } from '../context.ts'
import { sealedFor } from './subscribe.ts'

const SECOND = 1_000
const [MINUTE, HOUR] = [60 * SECOND, 3_600 * SECOND]
/** After which try it waits how long: three days in all, after the schedule that Standard Webhooks gives as an example (from memory). */
export const WAITS: readonly number[] = [
  5 * SECOND,
  5 * MINUTE,
  30 * MINUTE,
  2 * HOUR,
  5 * HOUR,
  10 * HOUR,
  14 * HOUR,
  20 * HOUR,
  24 * HOUR,
]
/** As long as a try may take and be noted; a process that died with it had no longer. */
const TAKEN_FOR = 2 * MINUTE
const AT_ONCE = 20
/** RFC 9110: gone, and likely for good; Standard Webhooks takes it as "send no more" (from memory). */
const GONE = 410

type Context = Pick<OperationContext, 'database' | 'clock'>
export type Sending = { readonly vault: Vault; readonly outside?: Outside }

/**
 * Sends what is due, in every county, and returns how many messages it tried. Any number of processes may do so at once;
 * a message that a process took and did not note is due again, so that it is sent at least once under one id.
 */
export async function deliverDue(context: Context, sending: Sending): Promise<number> {
  let tried = 0
  const counties = await withoutCounty(context.database, (tx) => countiesDue(tx, context.clock()))
  for (const county of counties) {
    const at = context.clock()
    const taken = await transact(context.database, serviceIn(county), (tx) =>
      takeDue(tx, county, at, new Date(at.getTime() + TAKEN_FOR), AT_ONCE),
    )
    await Promise.all(taken.map((it) => deliver(context, county, it, sending)))
    tried += taken.length
  }
  return tried
}

async function deliver(
  context: Context,
  county: string,
  it: DeliveryTaken,
  { vault, outside = INTERNET }: Sending,
): Promise<void> {
  const secret = vault.open(it.secret, sealedFor(county, it.subscription))
  const came: Result<Received, string> =
    secret === undefined
      ? { ok: false, error: 'the key of this subscription can’t be opened with the service’s own key' }
      : await send(it, secret, context.clock(), outside)
  const at = context.clock()
  await transact(context.database, serviceIn(county), async (tx) => {
    const says = came.ok ? `answered ${came.value.status}` : came.error
    if (came.ok && came.value.status >= 200 && came.value.status < 300) {
      await noteDelivery(tx, county, it.id, { state: 'delivered', says, nextAt: at, at })
      return
    }
    const wait = WAITS[it.tries - 1]
    const gone = came.ok && came.value.status === GONE
    const nextAt = new Date(at.getTime() + Math.max(wait ?? 0, asked(came, at)))
    await noteDelivery(tx, county, it.id, {
      state: wait === undefined || gone ? 'dead' : 'waiting',
      says,
      nextAt,
      at,
    })
    if (gone)
      await endSubscription(tx, county, it.subscription, { at, because: 'its address answered 410 (gone)' })
  })
}

function send(
  it: DeliveryTaken,
  secret: string,
  at: Date,
  outside: Outside,
): Promise<Result<Received, string>> {
  const headers = {
    'content-type': 'application/json',
    'user-agent': 'asfound',
    'webhook-id': it.id,
    'webhook-timestamp': String(Math.floor(at.getTime() / SECOND)),
    'webhook-signature': new Webhook(secret).sign(it.id, at, it.body),
  }
  return postTo(it.address, { headers, body: it.body }, outside)
}

/** How long the subscriber asks to wait (RFC 9110, 10.2.3: seconds or a date), at most a day, in ms. */
function asked(came: Result<Received, string>, at: Date): number {
  const text = came.ok ? came.value.retryAfter : null
  if (text === null) return 0
  const ms = /^\d+$/.test(text) ? Number(text) * SECOND : Date.parse(text) - at.getTime()
  return Number.isFinite(ms) ? Math.min(Math.max(ms, 0), 24 * HOUR) : 0
}
