import { sql } from 'kysely'
import type { PlainDate } from '../base/plain-date.ts'
import type { Tx } from './database/database.ts'

export type Parcel = {
  readonly id: string
  readonly number: string
  readonly address: string | null
  /** Split or merged away on that day; its number still finds what became of it. */
  readonly retiredOn: PlainDate | null
}

export type Alias = {
  readonly number: string
  readonly kind: 'renumbered' | 'split' | 'merged'
  readonly changedOn: PlainDate | null
  readonly note: string | null
}

/** How a search came to a parcel, from the surest to the vaguest: `street` is the street, and not that house. */
export const MATCHES = ['number', 'old-number', 'number-begins', 'address', 'street'] as const
export type ParcelMatch = {
  readonly parcel: Parcel
  readonly matched: (typeof MATCHES)[number]
  /** The number or address that matched, as it is on file. */
  readonly says: string
  /** 1 for a sure match, less for a misspelled street or another house of it. */
  readonly score: number
}

const COLUMNS = ['id', 'number', 'address', 'retired_on'] as const
type Row = { id: string; number: string; address: string | null; retired_on: string | null }
const asParcel = ({ id, number, address, retired_on }: Row): Parcel => ({
  id,
  number,
  address,
  retiredOn: retired_on as PlainDate | null,
})

/** By number in any spelling, old number, or street and house, in part or misspelled; best first. */
export async function searchParcels(tx: Tx, query: string, most: number): Promise<readonly ParcelMatch[]> {
  const { rows } = await sql<Row & { matched: ParcelMatch['matched']; says: string; score: number }>`
    select p.id, p.number, p.address, p.retired_on, s.matched, s.says, s.score
    from search_parcels(${query}, ${most}) with ordinality as s (parcel, matched, says, score, place)
    join parcel p on p.county = asking_county() and p.id = s.parcel
    order by s.place`.execute(tx)
  return rows.map(({ matched, says, score, ...row }) => ({ parcel: asParcel(row), matched, says, score }))
}

/** In order of their numbers, those after `after`. */
export async function parcelsAfter(
  tx: Tx,
  county: string,
  after: string | undefined,
  most: number,
): Promise<readonly Parcel[]> {
  let query = tx.selectFrom('parcel').select(COLUMNS).where('county', '=', county)
  if (after !== undefined) query = query.where('number', '>', after)
  return (await query.orderBy('number').limit(most).execute()).map(asParcel)
}

export async function parcelById(tx: Tx, county: string, id: string): Promise<Parcel | undefined> {
  const row = await tx
    .selectFrom('parcel')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()
  return row && asParcel(row)
}

/** The parcels a number in any spelling stands for: the one that bears it now, else those that an old number leads to. */
export async function parcelsNumbered(tx: Tx, county: string, number: string): Promise<readonly Parcel[]> {
  const bearing = await tx
    .selectFrom('parcel')
    .select(COLUMNS)
    .where('county', '=', county)
    .where((eb) =>
      eb.or([
        eb('key', '=', sql<string>`parcel_key(${number})`),
        eb('loose_key', '=', sql<string>`parcel_loose_key(${number})`),
      ]),
    )
    .limit(2)
    .execute()
  if (bearing.length > 0) return bearing.map(asParcel)
  const heirs = await tx
    .selectFrom('parcel_alias')
    .innerJoin('parcel', (join) =>
      join.onRef('parcel.county', '=', 'parcel_alias.county').onRef('parcel.id', '=', 'parcel_alias.parcel'),
    )
    .select(['parcel.id', 'parcel.number', 'parcel.address', 'parcel.retired_on'])
    .distinct()
    .where('parcel_alias.county', '=', county)
    .where((eb) =>
      eb.or([
        eb('parcel_alias.key', '=', sql<string>`parcel_key(${number})`),
        eb('parcel_alias.loose_key', '=', sql<string>`parcel_loose_key(${number})`),
      ]),
    )
    .orderBy('parcel.number')
    .execute()
  return heirs.map(asParcel)
}

/**
 * Whoever changes what a parcel's answer rests on takes this first: of two at once the second waits, and then reads
 * what the first has done.
 */
export async function lockParcel(tx: Tx, county: string, id: string): Promise<void> {
  await tx
    .selectFrom('parcel')
    .select('id')
    .where('county', '=', county)
    .where('id', '=', id)
    // Not the key: rows that only point at the parcel need not wait.
    .forNoKeyUpdate()
    .executeTakeFirstOrThrow()
}

export async function aliasesOf(tx: Tx, county: string, parcel: string): Promise<readonly Alias[]> {
  const rows = await tx
    .selectFrom('parcel_alias')
    .select(['number', 'kind', 'changed_on', 'note'])
    .where('county', '=', county)
    .where('parcel', '=', parcel)
    .orderBy('changed_on')
    .orderBy('number')
    .execute()
  return rows.map(({ number, kind, changed_on, note }) => ({
    number,
    kind,
    changedOn: changed_on as PlainDate | null,
    note,
  }))
}

export async function insertParcel(tx: Tx, county: string, parcel: Parcel): Promise<void> {
  const { id, number, address, retiredOn } = parcel
  await tx.insertInto('parcel').values({ county, id, number, address, retired_on: retiredOn }).execute()
}

export async function insertAlias(tx: Tx, county: string, parcel: string, alias: Alias): Promise<void> {
  const { number, kind, changedOn, note } = alias
  await tx
    .insertInto('parcel_alias')
    .values({ county, parcel, number, kind, changed_on: changedOn, note })
    .execute()
}

/** Those of `numbers` that parcels of the county bear now. */
export async function numbersAmong(
  tx: Tx,
  county: string,
  numbers: readonly string[],
): Promise<ReadonlySet<string>> {
  if (numbers.length === 0) return new Set()
  const rows = await tx
    .selectFrom('parcel')
    .select('number')
    .where('county', '=', county)
    .where('number', 'in', [...new Set(numbers)])
    .execute()
  return new Set(rows.map(({ number }) => number))
}
