import { sql } from 'kysely'
import type { PermitStanding } from '../records/filing.ts'
import type { FiledPermit, PermitRecord } from '../records/permit.ts'
import type { Tx } from './database/database.ts'
import { hashOf } from './hash.ts'
import { ofSystem } from './of-system.ts'

/** What is stored of a permit: what the paper says, and where each value came from. */
export type PermitContent = Pick<FiledPermit, 'record' | 'sources'>

/** A permit in the file of a parcel. */
export type PermitOnFile = FiledPermit & {
  readonly parcel: string
  /** The system that it builds. */
  readonly system: string
  /** A void or merged one builds nothing. */
  readonly standing: PermitStanding
  /** The permit that it was merged into. */
  readonly mergedInto: string | null
  readonly enteredAt: Date
  readonly changedAt: Date
}

/** One revision, as it was and will stay. */
export type PermitRevision = PermitContent & {
  readonly permit: string
  readonly revision: number
  readonly hash: string
  readonly reason: string | null
  readonly transcription: string | null
  readonly recordedBy: string
  readonly recordedAt: Date
}

type Made = {
  readonly by: string
  readonly at: Date
  readonly reason: string | null
  readonly transcription: string | null
}

const COLUMNS = [
  'id',
  'parcel',
  'system',
  'standing',
  'merged_into',
  'record',
  'revision',
  'created_at',
  'changed_at',
] as const
type Row = {
  id: string
  parcel: string
  system: string
  standing: 'void' | 'merged' | null
  merged_into: string | null
  record: unknown
  revision: number
  created_at: Date
  changed_at: Date
}

const asPermit = ({
  id,
  parcel,
  system,
  standing,
  merged_into,
  record,
  revision,
  created_at,
  changed_at,
}: Row): PermitOnFile => ({
  id,
  parcel,
  system,
  standing: standing ?? 'in-file',
  mergedInto: merged_into,
  revision,
  ...(record as PermitContent),
  enteredAt: created_at,
  changedAt: changed_at,
})

/** All of a system, in the order in which they were entered; void and merged ones are left out. */
export const permitsOf = (tx: Tx, county: string, system: string) => permitsBy(tx, county, 'system', system)

/** All in a parcel's file, whichever system they build; void and merged ones are left out. */
export const permitsFiled = (tx: Tx, county: string, parcel: string) =>
  permitsBy(tx, county, 'parcel', parcel)

async function permitsBy(
  tx: Tx,
  county: string,
  column: 'system' | 'parcel',
  id: string,
): Promise<readonly PermitOnFile[]> {
  const rows = await tx
    .selectFrom('permit')
    .select(COLUMNS)
    .where('county', '=', county)
    .where(column, '=', id)
    .where('standing', 'is', null)
    .orderBy('id')
    .execute()
  return rows.map(asPermit)
}

/** Another permit of the same number, in any writing, and whose file it lies in. */
export type NumberedAlike = {
  readonly id: string
  readonly number: string
  readonly kind: string
  readonly parcel: string
  readonly parcelNumber: string
  readonly address: string | null
}

/** More than that of one number are no slip of a clerk's. */
const MOST_ALIKE = 20

/** Permits of this number in the files of other parcels: one paper on two parcels, or two offices that count alike. */
export async function numberedAlike(
  tx: Tx,
  county: string,
  { number, parcel }: { readonly number: string; readonly parcel: string },
): Promise<readonly NumberedAlike[]> {
  const { rows } = await sql<NumberedAlike>`
    select t.id, t.number, t.kind, t.parcel, p.number as "parcelNumber", p.address
    from permit t join parcel p on p.county = t.county and p.id = t.parcel
    where t.county = ${county} and t.parcel <> ${parcel} and t.standing is null
      and regexp_replace(upper(t.number), '[^A-Z0-9]', '', 'g') = regexp_replace(upper(${number}), '[^A-Z0-9]', '', 'g')
    order by p.number, t.id limit ${MOST_ALIKE}`.execute(tx)
  return rows
}

export async function permitById(tx: Tx, county: string, id: string): Promise<PermitOnFile | undefined> {
  const row = await tx
    .selectFrom('permit')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()
  return row && asPermit(row)
}

export async function revisionsOf(
  tx: Tx,
  county: string,
  permit: string,
): Promise<readonly PermitRevision[]> {
  const rows = await tx
    .selectFrom('permit_revision')
    .selectAll()
    .where('county', '=', county)
    .where('permit', '=', permit)
    .orderBy('revision')
    .execute()
  return rows.map((row) => ({
    permit: row.permit,
    revision: row.revision,
    ...(row.record as PermitContent),
    hash: row.record_hash,
    reason: row.reason,
    transcription: row.transcription,
    recordedBy: row.recorded_by,
    recordedAt: row.recorded_at,
  }))
}

/** A permit as it was at one revision. */
export async function permitAt(
  tx: Tx,
  county: string,
  permit: string,
  revision: number,
): Promise<FiledPermit | undefined> {
  const row = await tx
    .selectFrom('permit_revision')
    .select('record')
    .where('county', '=', county)
    .where('permit', '=', permit)
    .where('revision', '=', revision)
    .executeTakeFirst()
  return row && { id: permit, revision, ...(row.record as PermitContent) }
}

export async function insertPermit(
  tx: Tx,
  county: string,
  permit: { readonly id: string; readonly parcel: string; readonly system: string } & PermitContent,
  made: Made,
): Promise<void> {
  const { id, parcel, system, record, sources } = permit
  const stored = JSON.stringify({ record, sources } satisfies PermitContent)
  await tx
    .insertInto('permit')
    .values({
      county,
      id,
      parcel,
      of_system: ofSystem({ system, parcel }),
      record: stored,
      ...askedBy(record),
      created_at: made.at,
      changed_at: made.at,
    })
    .execute()
  await insertRevision(tx, county, { id, revision: 1, record, sources }, made)
}

/** The next revision takes the place of the current one; the current one stays among the revisions. */
export async function revisePermit(
  tx: Tx,
  county: string,
  permit: FiledPermit & Pick<PermitOnFile, 'parcel' | 'system'>,
  made: Made,
): Promise<void> {
  const { id, revision, record, sources } = permit
  await tx
    .updateTable('permit')
    .set({
      of_system: ofSystem(permit),
      record: JSON.stringify({ record, sources } satisfies PermitContent),
      ...askedBy(record),
      revision,
      changed_at: made.at,
    })
    .where('county', '=', county)
    .where('id', '=', id)
    .execute()
  await insertRevision(tx, county, permit, made)
}

export async function insertRevision(tx: Tx, county: string, permit: FiledPermit, made: Made): Promise<void> {
  const content: PermitContent = { record: permit.record, sources: permit.sources }
  await tx
    .insertInto('permit_revision')
    .values({
      county,
      permit: permit.id,
      revision: permit.revision,
      record: JSON.stringify(content),
      record_hash: hashOf(content),
      reason: made.reason,
      transcription: made.transcription,
      recorded_by: made.by,
      recorded_at: made.at,
    })
    .execute()
}

const askedBy = ({ number, kind, issuedOn, approvedOn }: PermitRecord) => ({
  number,
  kind,
  issued_on: issuedOn,
  approved_on: approvedOn,
})
