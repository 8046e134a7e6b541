import type { PlainDate } from '../base/plain-date.ts'
import type { ParcelStatus } from '../reconcile/status.ts'
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
 * another way, nobody bears it, or nothing was derived yet: then the long way knows more. Whoever asks must be in `county`.
 */
export async function statusOfNumber(
  database: Pick<Database, 'ask'>,
  county: string,
  number: string,
): Promise<StatusOfParcel | undefined> {
  const [row] = await database.ask<StatusRow>('status_of', [county, number])
  if (!row) return undefined
  const { id, address, retired_on, status, good_until, derived_at } = row
  return {
    parcel: { id, number: row.number, address, retiredOn: retired_on },
    derived: { parcel: id, status, goodUntil: good_until, derivedAt: derived_at },
  }
}

type StatusRow = {
  readonly id: string
  readonly number: string
  readonly address: string | null
  readonly retired_on: PlainDate | null
  readonly status: DatedStatus
  readonly good_until: PlainDate | null
  readonly derived_at: Date
}
