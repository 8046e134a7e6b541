import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

/** A parcel that has something a rule could speak of: a paper or an inspection. */
export type ParcelOnFile = { readonly id: string; readonly number: string }

/** In the order of their ids, those after `after`. */
export async function parcelsOnFile(
  tx: Tx,
  county: string,
  after: string | null,
  most: number,
): Promise<readonly ParcelOnFile[]> {
  const { rows } = await sql<ParcelOnFile>`
    select p.id, p.number from parcel p
    where p.county = ${county} and p.id > ${after ?? '00000000-0000-0000-0000-000000000000'}::uuid
      and (exists (select from permit t where t.county = p.county and t.parcel = p.id)
        or exists (select from findings f where f.county = p.county and f.parcel = p.id and f.state = 'submitted'))
    order by p.id limit ${most}`.execute(tx)
  return rows
}

/** About how many there are, quickly: for telling how far something is. */
export async function countOnFile(tx: Tx, county: string): Promise<number> {
  const { rows } = await sql<{ count: number }>`
    select count(*) as count from (
      select parcel from permit where county = ${county}
      union select parcel from findings where county = ${county} and state = 'submitted') on_file`.execute(tx)
  return rows[0]!.count
}
