import { sql } from 'kysely'
import type { PermitRecord } from '../records/permit.ts'
import type { Tx } from './database/database.ts'
import { hashOf } from './hash.ts'
import { ofSystem } from './of-system.ts'
import type { PermitContent } from './permits.ts'

export type PermitOnParcel = PermitContent & {
  readonly id: string
  readonly parcel: string
  readonly system: string
}

/**
 * The permits in the files of these parcels whose numbers, in any writing, are among these: void and merged ones too, and
 * those that were moved away, so that an index that is read again brings nothing back.
 */
export async function permitsNumbered(
  tx: Tx,
  county: string,
  parcels: readonly string[],
  numbers: readonly string[],
): Promise<readonly { readonly parcel: string; readonly record: PermitRecord }[]> {
  if (parcels.length === 0) return []
  const plain = [...new Set(numbers.map((number) => number.toUpperCase().replace(/[^A-Z0-9]/g, '')))]
  const { rows } = await sql<{ parcel: string; record: PermitRecord }>`
    select here.parcel, p.record -> 'record' as record
    from unnest(${[...parcels]}::uuid[]) as here (parcel)
    -- One parcel after the other, by its index: while a file fills the table nothing is known of it yet, and asked for all
    -- at once they would be looked for in the whole of it.
    cross join lateral (
      select * from permit where county = ${county} and permit.parcel = here.parcel
      -- What was moved away does not come back with the next index of the county.
      union all select t.* from filing_change c join permit t on t.county = c.county and t.id = c.permit
        where c.county = ${county} and c.from_parcel = here.parcel and c.act = 'move' and t.parcel <> here.parcel
      offset 0) p
    where regexp_replace(upper(p.number), '[^A-Z0-9]', '', 'g') = any (${plain}::text[])`.execute(tx)
  return rows
}

/**
 * Many new permits, each with its first revision, in two statements. The rows travel as one JSON text: measured as fast
 * as COPY into a temporary table and on from there, and it needs no table of its own.
 */
export async function insertPermits(
  tx: Tx,
  county: string,
  permits: readonly PermitOnParcel[],
  made: { readonly by: string; readonly at: Date },
): Promise<void> {
  if (permits.length === 0) return
  const rows = JSON.stringify(
    permits.map(({ id, parcel, system, record, sources }) => {
      const content: PermitContent = { record, sources }
      const { number, kind, issuedOn, approvedOn } = record
      return {
        id,
        parcel,
        of_system: ofSystem({ system, parcel }),
        number,
        kind,
        issued_on: issuedOn,
        approved_on: approvedOn,
        record: content,
        hash: hashOf(content),
      }
    }),
  )
  await sql`
    with given as materialized (
      select * from json_to_recordset(${rows}::json) as r (
        id uuid, parcel uuid, of_system uuid, number text, kind text, issued_on text, approved_on text, record jsonb, hash text)),
    entered as (
      insert into permit (county, id, parcel, of_system, number, kind, issued_on, approved_on, record, created_at, changed_at)
      select ${county}, id, parcel, of_system, number, kind, issued_on, approved_on, record, ${made.at}, ${made.at} from given)
    insert into permit_revision (county, permit, revision, record, record_hash, recorded_by, recorded_at)
    select ${county}, id, 1, record, hash, ${made.by}::uuid, ${made.at} from given`.execute(tx)
}
