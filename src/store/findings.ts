import { dayOf } from '../base/plain-date.ts'
import type { FindingsRecord, SubmittedFindings } from '../records/findings.ts'
import type { Tx } from './database/database.ts'
import { hashOf } from './hash.ts'
import { ofSystem } from './of-system.ts'

/** One inspection by one firm, as a draft or as submitted. */
export type Findings = {
  readonly id: string
  readonly parcel: string
  /** The system that was inspected. */
  readonly system: string
  readonly organization: string
  readonly state: 'draft' | 'submitted'
  readonly record: FindingsRecord
  readonly revision: number
  /** The submitted findings whose place these take. */
  readonly amends: string | null
  /** The submitted findings that have taken the place of these. */
  readonly amendedBy: string | null
  readonly createdAt: Date
  readonly changedAt: Date
  readonly submittedAt: Date | null
}

const select = (tx: Tx, county: string) =>
  tx
    .selectFrom('findings as f')
    .leftJoin('findings as later', (join) =>
      join
        .onRef('later.county', '=', 'f.county')
        .onRef('later.amends', '=', 'f.id')
        .on('later.state', '=', 'submitted'),
    )
    .select([
      'f.id',
      'f.parcel',
      'f.system',
      'f.organization',
      'f.state',
      'f.record',
      'f.revision',
      'f.amends',
      'later.id as amendedBy',
      'f.created_at as createdAt',
      'f.changed_at as changedAt',
      'f.submitted_at as submittedAt',
    ])
    .where('f.county', '=', county)

type Row = Omit<Findings, 'record'> & { readonly record: unknown }
const asFindings = (row: Row): Findings => ({ ...row, record: row.record as FindingsRecord })

/** As the reconciliation takes them: the firm by its id, which does not change when its name does. */
export function asSubmitted(findings: Findings): SubmittedFindings | null {
  const { id, organization, submittedAt, record } = findings
  return submittedAt === null ? null : { id, firm: organization, submittedOn: dayOf(submittedAt), record }
}

export async function findingsById(tx: Tx, county: string, id: string): Promise<Findings | undefined> {
  const row = await select(tx, county).where('f.id', '=', id).executeTakeFirst()
  return row && asFindings(row)
}

/** Held until the transaction ends, so that of two writers the second sees what the first made of it. */
export async function lockFindings(tx: Tx, county: string, id: string): Promise<Findings | undefined> {
  await tx
    .selectFrom('findings')
    .select('id')
    .where('county', '=', county)
    .where('id', '=', id)
    .forUpdate()
    .executeTakeFirst()
  return findingsById(tx, county, id)
}

/** All of a system that the asker may see, newest inspection first. */
export async function findingsOf(tx: Tx, county: string, system: string): Promise<readonly Findings[]> {
  const rows = await select(tx, county)
    .where('f.system', '=', system)
    .orderBy('f.inspected_on', 'desc')
    .orderBy('f.id', 'desc')
    .execute()
  return rows.map(asFindings)
}

/** What a system is compared with: of the findings submitted and not amended, those of the newest inspection. */
export async function newestSubmitted(tx: Tx, county: string, system: string): Promise<Findings | undefined> {
  const row = await select(tx, county)
    .where('f.system', '=', system)
    .where('f.state', '=', 'submitted')
    .where('later.id', 'is', null)
    .orderBy('f.inspected_on', 'desc')
    .orderBy('f.submitted_at', 'desc')
    .orderBy('f.id', 'desc')
    .limit(1)
    .executeTakeFirst()
  return row && asFindings(row)
}

/** The draft or submitted findings that amend these, whoever may see them. */
export async function amendmentOf(tx: Tx, county: string, id: string): Promise<string | undefined> {
  const row = await tx
    .selectFrom('findings')
    .select('id')
    .where('county', '=', county)
    .where('amends', '=', id)
    .executeTakeFirst()
  return row?.id
}

type Draft = Pick<Findings, 'id' | 'parcel' | 'system' | 'organization' | 'record' | 'amends'>

export async function insertDraft(
  tx: Tx,
  county: string,
  draft: Draft,
  made: { readonly by: string; readonly at: Date },
): Promise<void> {
  const { id, parcel, system, organization, record, amends } = draft
  await tx
    .insertInto('findings')
    .values({
      county,
      id,
      parcel,
      of_system: ofSystem({ system, parcel }),
      organization,
      state: 'draft',
      inspected_on: record.inspectedOn,
      record: JSON.stringify(record),
      amends,
      created_by: made.by,
      created_at: made.at,
      changed_at: made.at,
    })
    .execute()
  await insertRevision(tx, county, id, 1, record, made)
}

export async function changeDraft(
  tx: Tx,
  county: string,
  { id, revision, record }: Pick<Findings, 'id' | 'revision' | 'record'>,
  made: { readonly by: string; readonly at: Date },
): Promise<void> {
  await tx
    .updateTable('findings')
    .set({
      record: JSON.stringify(record),
      inspected_on: record.inspectedOn,
      revision,
      changed_at: made.at,
    })
    .where('county', '=', county)
    .where('id', '=', id)
    .execute()
  await insertRevision(tx, county, id, revision, record, made)
}

export async function markSubmitted(
  tx: Tx,
  county: string,
  id: string,
  revision: number,
  made: { readonly by: string; readonly at: Date },
): Promise<void> {
  await tx
    .updateTable('findings')
    .set({
      state: 'submitted',
      revision,
      submitted_by: made.by,
      submitted_at: made.at,
      changed_at: made.at,
    })
    .where('county', '=', county)
    .where('id', '=', id)
    .execute()
}

async function insertRevision(
  tx: Tx,
  county: string,
  findings: string,
  revision: number,
  record: FindingsRecord,
  made: { readonly by: string; readonly at: Date },
): Promise<void> {
  await tx
    .insertInto('findings_revision')
    .values({
      county,
      findings,
      revision,
      record: JSON.stringify(record),
      record_hash: hashOf(record),
      recorded_by: made.by,
      recorded_at: made.at,
    })
    .execute()
}
