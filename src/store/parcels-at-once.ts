import { sql } from 'kysely'
import type { PlainDate } from '../base/plain-date.ts'
import type { Tx } from './database/database.ts'
import type { Alias, Parcel } from './parcels.ts'

/** A parcel as the list has it, with the old numbers that lead to it. */
export type ParcelOnList = Parcel & { readonly knownAs: readonly string[] }

/** A parcel as it is to be listed, with the old numbers to add. */
export type ListedParcel = Parcel & {
  readonly aliases: readonly Omit<Alias, 'note'>[]
  readonly isNew: boolean
}

/** Those of `numbers` that are on the list, held until the transaction ends. */
export async function parcelsListed(
  tx: Tx,
  county: string,
  numbers: readonly string[],
): Promise<readonly ParcelOnList[]> {
  if (numbers.length === 0) return []
  const { rows } = await sql<{
    id: string
    number: string
    address: string | null
    retired_on: PlainDate | null
    known_as: readonly string[]
  }>`
    select p.id, p.number, p.address, p.retired_on,
      array(select a.number from parcel_alias a where a.county = p.county and a.parcel = p.id) as known_as
    from parcel p where p.county = ${county} and p.number = any (${[...new Set(numbers)]}::text[])
    order by p.id for no key update`.execute(tx)
  return rows.map(({ retired_on, known_as, ...row }) => ({
    ...row,
    retiredOn: retired_on,
    knownAs: known_as,
  }))
}

/** Puts new parcels on the list and writes changed ones, with the old numbers that lead to them. */
export async function listParcels(tx: Tx, county: string, parcels: readonly ListedParcel[]): Promise<void> {
  if (parcels.length === 0) return
  const given = (list: readonly ListedParcel[]) =>
    JSON.stringify(
      list.map(({ id, number, address, retiredOn }) => ({ id, number, address, retired_on: retiredOn })),
    )
  const [fresh, changed] = [parcels.filter(({ isNew }) => isNew), parcels.filter(({ isNew }) => !isNew)]
  if (fresh.length > 0) {
    await sql`
      insert into parcel (county, id, number, address, retired_on)
      select ${county}, id, number, address, retired_on
      from json_to_recordset(${given(fresh)}::json) as r (id uuid, number text, address text, retired_on date)`.execute(
      tx,
    )
  }
  if (changed.length > 0) {
    await sql`
      update parcel p set address = r.address, retired_on = r.retired_on, revision = p.revision + 1
      from json_to_recordset(${given(changed)}::json) as r (id uuid, address text, retired_on date)
      where p.county = ${county} and p.id = r.id
        and (p.address is distinct from r.address or p.retired_on is distinct from r.retired_on)`.execute(tx)
  }
  const aliases = parcels.flatMap(({ id, aliases: own }) =>
    own.map(({ number, kind, changedOn }) => ({ parcel: id, number, kind, changed_on: changedOn })),
  )
  if (aliases.length === 0) return
  await sql`
    insert into parcel_alias (county, parcel, number, kind, changed_on)
    select ${county}, parcel, number, kind, changed_on
    from json_to_recordset(${JSON.stringify(aliases)}::json) as r (parcel uuid, number text, kind text, changed_on date)
    on conflict do nothing`.execute(tx)
}
