import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

export const DELIVERY_STATES = ['waiting', 'delivered', 'dead'] as const

/** One message to one subscriber. */
export type Delivery = {
  readonly id: string
  readonly subscription: string
  readonly state: (typeof DELIVERY_STATES)[number]
  readonly tries: number
  readonly nextAt: Date
  readonly says: string | null
  readonly body: string
  readonly madeAt: Date
  readonly changedAt: Date
}

/** A message that somebody has taken to send, and what is needed for it. */
export type DeliveryTaken = Pick<Delivery, 'id' | 'subscription' | 'tries' | 'body'> & {
  readonly address: string
  readonly secret: Buffer
}

/** The counties in which something is due. */
export async function countiesDue(tx: Tx, at: Date): Promise<readonly string[]> {
  const { rows } = await sql<{ county: string }>`
    select county from counties_with_deliveries_due(${at}) as county`.execute(tx)
  return rows.map(({ county }) => county)
}

/**
 * Takes messages that are due and that nobody else has taken. Until `until` they are this process's to send; if it dies
 * meanwhile they are due again then. Counts the try before it is made.
 */
export async function takeDue(
  tx: Tx,
  county: string,
  at: Date,
  until: Date,
  most: number,
): Promise<readonly DeliveryTaken[]> {
  const { rows } = await sql<DeliveryTaken>`
    with due as (
      select d.id from delivery d
      where d.county = ${county} and d.state = 'waiting' and d.next_at <= ${at}
      order by d.next_at limit ${most} for update skip locked)
    update delivery d set tries = d.tries + 1, next_at = ${until}, changed_at = ${at}
    from due, subscription s
    where d.county = ${county} and d.id = due.id and s.county = d.county and s.id = d.subscription
      and s.address is not null
    returning d.id, d.subscription, d.tries, d.body, s.address, s.secret`.execute(tx)
  return rows
}

type Came = Pick<Delivery, 'state' | 'says'> & { readonly nextAt: Date; readonly at: Date }

/** What came of a try; false where somebody has settled it meanwhile. */
export async function noteDelivery(tx: Tx, county: string, id: string, came: Came): Promise<boolean> {
  const { numUpdatedRows } = await tx
    .updateTable('delivery')
    .set({ state: came.state, says: came.says, next_at: came.nextAt, changed_at: came.at })
    .where('county', '=', county)
    .where('id', '=', id)
    .where('state', '=', 'waiting')
    .executeTakeFirst()
  return numUpdatedRows > 0n
}

/** To be tried again from the start; false where there is none of that id for the asker, or it waits already. */
export async function sendAgain(
  tx: Tx,
  county: string,
  subscription: string,
  id: string,
  at: Date,
): Promise<boolean> {
  const { numUpdatedRows } = await tx
    .updateTable('delivery')
    .set({ state: 'waiting', tries: 0, next_at: at, changed_at: at })
    .where('county', '=', county)
    .where('subscription', '=', subscription)
    .where('id', '=', id)
    .where('state', '<>', 'waiting')
    .executeTakeFirst()
  return numUpdatedRows > 0n
}

/** A change of status kept for the page, as it was written then. */
export type NotificationKept = { readonly parcelNumber: string; readonly body: string; readonly madeAt: Date }

/** The changes kept for the caller's organization, newest first. */
export const notificationsKept = (
  tx: Tx,
  county: string,
  most: number,
): Promise<readonly NotificationKept[]> =>
  tx
    .selectFrom('delivery as d')
    .innerJoin('subscription as s', (join) =>
      join.onRef('s.county', '=', 'd.county').onRef('s.id', '=', 'd.subscription'),
    )
    .innerJoin('parcel as p', (join) =>
      join.onRef('p.county', '=', 'd.county').onRef('p.id', '=', 'd.parcel'),
    )
    .select(['p.number as parcelNumber', 'd.body', 'd.made_at as madeAt'])
    .where('d.county', '=', county)
    .where('s.address', 'is', null)
    .orderBy('d.made_at', 'desc')
    .orderBy('d.id', 'desc')
    .limit(most)
    .execute()

/** Where a page of the list ended. */
export type DeliveryKey = { readonly madeAt: Date; readonly id: string }

/** Newest first. */
export async function deliveriesOf(
  tx: Tx,
  county: string,
  subscription: string,
  asked: {
    readonly state: Delivery['state'] | undefined
    readonly before: DeliveryKey | undefined
    readonly most: number
  },
): Promise<readonly Delivery[]> {
  const { state, before, most } = asked
  let query = tx
    .selectFrom('delivery')
    .select([
      'id',
      'subscription',
      'state',
      'tries',
      'next_at as nextAt',
      'says',
      'body',
      'made_at as madeAt',
      'changed_at as changedAt',
    ])
    .where('county', '=', county)
    .where('subscription', '=', subscription)
  if (state !== undefined) query = query.where('state', '=', state)
  if (before)
    query = query.where((eb) => eb(eb.refTuple('made_at', 'id'), '<', eb.tuple(before.madeAt, before.id)))
  return query.orderBy('made_at', 'desc').orderBy('id', 'desc').limit(most).execute()
}
