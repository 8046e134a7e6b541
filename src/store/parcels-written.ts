import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

/** A parcel that a written number or address leads to. */
export type Led = { readonly written: string; readonly parcel: string; readonly number: string }

/** The parcels that bear these numbers, written in the county's own way. */
export async function parcelsBearing(
  tx: Tx,
  county: string,
  numbers: readonly string[],
): Promise<readonly Led[]> {
  if (numbers.length === 0) return []
  const { rows } = await sql<Led>`
    select number as written, id as parcel, number from parcel
    where county = ${county} and number = any (${[...numbers]}::text[])`.execute(tx)
  return rows
}

/** The parcels that old numbers, in any spelling, lead to: several where one was split. */
export async function parcelsOnceNumbered(
  tx: Tx,
  county: string,
  numbers: readonly string[],
): Promise<readonly Led[]> {
  if (numbers.length === 0) return []
  const { rows } = await sql<Led>`
    select distinct asked.written, p.id as parcel, p.number
    from unnest(${[...numbers]}::text[]) as asked (written)
    join parcel_alias a on a.county = ${county} and a.loose_key = parcel_loose_key(asked.written)
    join parcel p on p.county = a.county and p.id = a.parcel`.execute(tx)
  return rows
}

/** The parcels that stand at these addresses: house and street, in any of the usual abbreviations. */
export async function parcelsStandingAt(
  tx: Tx,
  county: string,
  addresses: readonly string[],
): Promise<readonly Led[]> {
  if (addresses.length === 0) return []
  const { rows } = await sql<Led>`
    select asked.written, p.id as parcel, p.number
    from unnest(${[...addresses]}::text[]) as asked (written)
    join parcel p on p.county = ${county} and p.street_key = street_key(asked.written)
      and p.house_number = house_number(asked.written) and p.retired_on is null`.execute(tx)
  return rows
}
