import { sql } from 'kysely'
import type { FilingAct, FilingReason } from '../records/filing.ts'
import type { Tx } from './database/database.ts'
import { ofSystem } from './of-system.ts'
import type { PermitOnFile } from './permits.ts'
import { insertRevision } from './permits.ts'

/** One change of how a permit is filed, as it was made and will stay. */
export type FilingChange = {
  readonly id: string
  readonly permit: string
  readonly revision: number
  readonly act: FilingAct
  readonly reason: FilingReason
  readonly fromParcel: string
  readonly toParcel: string
  /** The permit that it was merged into, or separated from. */
  readonly other: string | null
  readonly changedBy: string
  readonly changedAt: Date
  /** The reviewer's own words; null for whoever may not read them. */
  readonly note: string | null
}

/** Files a permit another way: a revision that says the same, so that whoever read the one before is told. */
export async function changeFiling(
  tx: Tx,
  county: string,
  permit: PermitOnFile,
  change: Omit<FilingChange, 'note'>,
): Promise<void> {
  const { id, revision, parcel, standing, mergedInto } = permit
  const { changedBy: by, changedAt: at } = change
  await tx
    .updateTable('permit')
    .set({
      parcel,
      of_system: ofSystem(permit),
      standing: standing === 'in-file' ? null : standing,
      merged_into: mergedInto,
      revision,
      changed_at: at,
    })
    .where('county', '=', county)
    .where('id', '=', id)
    .execute()
  await insertRevision(tx, county, permit, { by, at, reason: null, transcription: null })
  await tx
    .insertInto('filing_change')
    .values({
      county,
      id: change.id,
      permit: id,
      revision,
      act: change.act,
      reason: change.reason,
      from_parcel: change.fromParcel,
      to_parcel: change.toParcel,
      other: change.other,
      changed_by: by,
      changed_at: at,
    })
    .execute()
}

/** Oldest first. The words lie in the events, of which a firm has no rows. */
export async function filingChangesOf(
  tx: Tx,
  county: string,
  permit: string,
): Promise<readonly FilingChange[]> {
  const { rows } = await sql<FilingChange>`
    select c.id, c.permit, c.revision, c.act, c.reason, c.from_parcel as "fromParcel", c.to_parcel as "toParcel", c.other,
      c.changed_by as "changedBy", c.changed_at as "changedAt", e.body ->> 'note' as note
    from filing_change c left join event e on e.county = c.county and e.id = c.id
    where c.county = ${county} and c.permit = ${permit} order by c.revision`.execute(tx)
  return rows
}

/** A permit that a parcel's file once counted and does not count now: it is void, merged, or in another file. */
export type PermitElsewhere = {
  readonly id: string
  readonly number: string
  readonly kind: string
  readonly standing: PermitOnFile['standing']
  readonly mergedInto: string | null
  readonly parcel: string
  readonly parcelNumber: string
}

/** More than that are no slip of a clerk's. */
const MOST_ELSEWHERE = 200

export async function permitsElsewhere(
  tx: Tx,
  county: string,
  parcel: string,
): Promise<readonly PermitElsewhere[]> {
  const { rows } = await sql<PermitElsewhere>`
    select t.id, t.number, t.kind, coalesce(t.standing, 'in-file') as standing, t.merged_into as "mergedInto", t.parcel,
      p.number as "parcelNumber"
    from (
      select id from permit where county = ${county} and parcel = ${parcel} and standing is not null
      union select permit from filing_change where county = ${county} and from_parcel = ${parcel} and act = 'move') gone
    join permit t on t.county = ${county} and t.id = gone.id
    join parcel p on p.county = t.county and p.id = t.parcel
    where t.parcel <> ${parcel} or t.standing is not null
    order by t.id limit ${MOST_ELSEWHERE}`.execute(tx)
  return rows
}

/** The permits that were merged into this one. */
export async function mergedInto(tx: Tx, county: string, permit: string): Promise<readonly string[]> {
  const rows = await tx
    .selectFrom('permit')
    .select('id')
    .where('county', '=', county)
    .where('merged_into', '=', permit)
    .orderBy('id')
    .execute()
  return rows.map(({ id }) => id)
}
