import { sql } from 'kysely'
import type { FindingsRecord } from '../records/findings.ts'
import type { Tx } from './database/database.ts'
import { hashOf } from './hash.ts'
import { ofSystem } from './of-system.ts'

/** An inspection as it is imported: already submitted. */
export type SubmittedInspection = {
  readonly id: string
  readonly parcel: string
  readonly system: string
  readonly organization: string
  readonly record: FindingsRecord
}

/** Inspection firms that the asker may see, by their names in lower case. */
export async function firmsNamed(tx: Tx, names: readonly string[]): Promise<ReadonlyMap<string, string>> {
  if (names.length === 0) return new Map()
  const { rows } = await sql<{ id: string; name: string }>`
    select id, lower(name) as name from organization
    where kind = 'firm' and lower(name) = any (${[...new Set(names.map((name) => name.toLowerCase()))]}::text[])`.execute(
    tx,
  )
  return new Map(rows.map(({ id, name }) => [name, id]))
}

/** The inspections submitted for these parcels and not amended since. */
export async function inspectionsOn(
  tx: Tx,
  county: string,
  parcels: readonly string[],
): Promise<readonly Omit<SubmittedInspection, 'id'>[]> {
  if (parcels.length === 0) return []
  const { rows } = await sql<Omit<SubmittedInspection, 'id'>>`
    select f.parcel, f.system, f.organization, f.record from findings f
    where f.county = ${county} and f.parcel = any (${[...parcels]}::uuid[]) and f.state = 'submitted'
      and not exists (select from findings later
        where later.county = f.county and later.amends = f.id and later.state = 'submitted')`.execute(tx)
  return rows
}

export async function insertSubmitted(
  tx: Tx,
  county: string,
  inspections: readonly SubmittedInspection[],
  made: { readonly by: string; readonly at: Date },
): Promise<void> {
  if (inspections.length === 0) return
  const rows = JSON.stringify(
    inspections.map(({ record, system, ...inspection }) => ({
      ...inspection,
      of_system: ofSystem({ system, parcel: inspection.parcel }),
      inspected_on: record.inspectedOn,
      record,
      hash: hashOf(record),
    })),
  )
  await sql`
    insert into findings (county, id, parcel, of_system, organization, state, inspected_on, record, created_by, created_at, changed_at,
      submitted_by, submitted_at)
    select ${county}, id, parcel, of_system, organization, 'submitted', inspected_on, record, ${made.by}::uuid, ${made.at}, ${made.at},
      ${made.by}::uuid, ${made.at}
    from json_to_recordset(${rows}::json) as r (id uuid, parcel uuid, of_system uuid, organization uuid, inspected_on date, record jsonb)`.execute(
    tx,
  )
  // A second statement: who may see a revision is asked of its findings, which have to be there already.
  await sql`
    insert into findings_revision (county, findings, revision, record, record_hash, recorded_by, recorded_at)
    select ${county}, id, 1, record, hash, ${made.by}::uuid, ${made.at}
    from json_to_recordset(${rows}::json) as r (id uuid, record jsonb, hash text)`.execute(tx)
}
