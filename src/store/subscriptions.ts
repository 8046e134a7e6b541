import type { Tx } from './database/database.ts'

/** Somebody who is told of status changes. */
export type Subscription = {
  readonly id: string
  readonly organization: string
  /** Null: no webhook; kept for a page of the service. */
  readonly address: string | null
  /** The parcel it is about; null for every parcel of the county. */
  readonly parcel: string | null
  readonly parcelNumber: string | null
  readonly madeAt: Date
  readonly endedAt: Date | null
  readonly endedBecause: string | null
}

const select = (tx: Tx, county: string) =>
  tx
    .selectFrom('subscription as s')
    .leftJoin('parcel as p', (join) => join.onRef('p.county', '=', 's.county').onRef('p.id', '=', 's.parcel'))
    .select([
      's.id',
      's.organization',
      's.address',
      's.parcel',
      'p.number as parcelNumber',
      's.made_at as madeAt',
      's.ended_at as endedAt',
      's.ended_because as endedBecause',
    ])
    .where('s.county', '=', county)

export async function insertSubscription(
  tx: Tx,
  county: string,
  made: Pick<Subscription, 'id' | 'organization' | 'address' | 'parcel' | 'madeAt'> & {
    readonly account: string
    readonly secret: Buffer | null
  },
): Promise<void> {
  const { madeAt, ...row } = made
  await tx
    .insertInto('subscription')
    .values({ county, ...row, made_at: madeAt, ended_because: null })
    .execute()
}

export const subscriptionById = (tx: Tx, county: string, id: string): Promise<Subscription | undefined> =>
  select(tx, county).where('s.id', '=', id).executeTakeFirst()

/** Those that the asker's organization has, newest first. */
export function subscriptionsBefore(
  tx: Tx,
  county: string,
  before: string | undefined,
  most: number,
): Promise<readonly Subscription[]> {
  let query = select(tx, county)
  if (before !== undefined) query = query.where('s.id', '<', before)
  return query.orderBy('s.id', 'desc').limit(most).execute()
}

/** The asker's organization's that are live and about this one parcel, oldest first. */
export const liveOnParcel = (tx: Tx, county: string, parcel: string): Promise<readonly Subscription[]> =>
  select(tx, county).where('s.parcel', '=', parcel).where('s.ended_at', 'is', null).orderBy('s.id').execute()

export const countLive = async (tx: Tx, county: string): Promise<number> => {
  const { count } = await tx
    .selectFrom('subscription')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('county', '=', county)
    .where('ended_at', 'is', null)
    .executeTakeFirstOrThrow()
  return count
}

/** False where it was ended before. What still waits for it is not tried any more. */
export async function endSubscription(
  tx: Tx,
  county: string,
  id: string,
  ended: { readonly at: Date; readonly because: string | null },
): Promise<boolean> {
  const { numUpdatedRows } = await tx
    .updateTable('subscription')
    .set({ ended_at: ended.at, ended_because: ended.because })
    .where('county', '=', county)
    .where('id', '=', id)
    .where('ended_at', 'is', null)
    .executeTakeFirst()
  if (numUpdatedRows === 0n) return false
  await tx
    .updateTable('delivery')
    .set({ state: 'dead', says: 'the subscription was ended', changed_at: ended.at })
    .where('county', '=', county)
    .where('subscription', '=', id)
    .where('state', '=', 'waiting')
    .execute()
  return true
}
