import type { PlainDate } from '../base/plain-date.ts'
import type { ParcelStatus } from '../reconcile/status.ts'
import type { Actor } from './database/actor.ts'
import type { Database, Tx } from './database/database.ts'
import type { Parcel } from './parcels.ts'

/** A status and the day it speaks of. */
export type DatedStatus = ParcelStatus & { readonly asOf: PlainDate }

/** A parcel's status as it was last derived. */
export type DerivedStatus = {
  readonly parcel: string
  readonly status: DatedStatus
  /** The last day on which it holds if nothing happens; null where time alone changes nothing. */
  readonly goodUntil: PlainDate | null
  readonly derivedAt: Date
}

export async function derivedStatus(
  tx: Tx,
  county: string,
  parcel: string,
): Promise<DerivedStatus | undefined> {
  const row = await tx
    .selectFrom('parcel_status')
    .select(['body', 'good_until', 'derived_at'])
    .where('county', '=', county)
    .where('parcel', '=', parcel)
    .executeTakeFirst()
  return (
    row && {
      parcel,
      status: row.body as DatedStatus,
      goodUntil: row.good_until as PlainDate | null,
      derivedAt: row.derived_at,
    }
  )
}

export async function writeStatus(tx: Tx, county: string, derived: DerivedStatus): Promise<void> {
  const values = {
    word: derived.status.word,
    good_until: derived.goodUntil,
    derived_at: derived.derivedAt,
    body: JSON.stringify(derived.status),
  }
  await tx
    .insertInto('parcel_status')
    .values({ county, parcel: derived.parcel, ...values })
    .onConflict((conflict) => conflict.columns(['county', 'parcel']).doUpdateSet(values))
    .execute()
}

export type StatusOfParcel = { readonly parcel: Parcel; readonly derived: DerivedStatus }

/**
 * The same for the parcel that bears just this number, in one round trip; undefined where the number is written in
 * another way, nobody bears it, or nothing was derived yet: then the long way knows more.
 */
export async function statusOfNumber(
  database: Pick<Database, 'ask'>,
  actor: Actor,
  number: string,
): Promise<StatusOfParcel | undefined> {
  const [row] = await database.ask<Parcel & Omit<DerivedStatus, 'parcel'>>(actor, {
    name: 'status-of-number',
    text: `select p.id, p.number, p.address, p.retired_on as "retiredOn",
        s.body as status, s.good_until as "goodUntil", s.derived_at as "derivedAt"
      from parcel p join parcel_status s on s.county = p.county and s.parcel = p.id
      where p.county = $1 and p.number = $2`,
    values: [actor.county, number],
  })
  if (!row) return undefined
  const { id, number: borne, address, retiredOn, ...derived } = row
  return { parcel: { id, number: borne, address, retiredOn }, derived: { parcel: id, ...derived } }
}
