import { sql } from 'kysely'
import type { PlainDate } from '../base/plain-date.ts'
import type { FindingsRecord } from '../records/findings.ts'
import type { FiledPermit } from '../records/permit.ts'
import type { Tx } from './database/database.ts'
import type { Decision } from './decisions.ts'
import type { Findings } from './findings.ts'
import type { PermitContent } from './permits.ts'
import type { InputsNamed } from './reconciliations.ts'

/** The newest answer for a parcel, by what it was made from. */
export type LastAnswer = {
  readonly parcel: string
  readonly inputs: InputsNamed
  readonly inputHash: string
  readonly engine: string
  readonly resultHash: string
  readonly madeAt: Date
  /** The last day on which it holds if nothing happens. */
  readonly goodUntil: PlainDate | null
}

/**
 * What the reconciliations of many parcels with a system of their own alone rest on, in as many round trips as for one. In
 * the orders in which a single
 * parcel's are read: the answer's hash depends on them.
 */
export type ManyOnFile = {
  readonly permits: ReadonlyMap<string, readonly FiledPermit[]>
  readonly decisions: ReadonlyMap<string, readonly Decision[]>
  readonly findings: ReadonlyMap<string, Findings>
  readonly answers: ReadonlyMap<string, LastAnswer>
}

/** In the order of their ids, as everyone has to who locks several: no two wait for each other. */
export async function lockParcels(tx: Tx, county: string, parcels: readonly string[]): Promise<void> {
  await sql`
    select from parcel where county = ${county} and id = any (${[...parcels]}::uuid[])
    order by id for no key update`.execute(tx)
}

export async function onFileOf(tx: Tx, county: string, parcels: readonly string[]): Promise<ManyOnFile> {
  const [permits, decisions, findings, answers] = await Promise.all([
    permitsOf(tx, county, parcels),
    decisionsOf(tx, county, parcels),
    findingsOf(tx, county, parcels),
    answersOf(tx, county, parcels),
  ])
  return {
    permits: grouped(permits),
    decisions: grouped(decisions),
    findings: new Map(findings.map((it) => [it.parcel, it])),
    answers: new Map(answers.map((it) => [it.parcel, it])),
  }
}

function grouped<T extends { readonly parcel: string }>(rows: readonly T[]): ReadonlyMap<string, T[]> {
  return Map.groupBy(rows, ({ parcel }) => parcel)
}

async function permitsOf(
  tx: Tx,
  county: string,
  parcels: readonly string[],
): Promise<readonly (FiledPermit & { readonly parcel: string })[]> {
  const { rows } = await sql<{ id: string; parcel: string; revision: number; record: PermitContent }>`
    select id, parcel, revision, record from permit
    where county = ${county} and standing is null and parcel = any (${[...parcels]}::uuid[]) order by parcel, id`.execute(
    tx,
  )
  return rows.map(({ record, ...row }) => ({ ...row, ...record }))
}

async function decisionsOf(tx: Tx, county: string, parcels: readonly string[]): Promise<readonly Decision[]> {
  const { rows } = await sql<
    Omit<Decision, 'correction' | 'asks'> & { readonly body: Pick<Decision, 'correction' | 'asks'> }
  >`
    select d.id, d.discrepancy, d.parcel, d.system, d.action, d.reason, d.evidence_hash as "evidenceHash", d.body, d.supersedes,
      null as "supersededBy", d.decided_by as "decidedBy", d.decided_at as "decidedAt"
    from decision d
    where d.county = ${county} and d.parcel = any (${[...parcels]}::uuid[])
      and not exists (select from decision later where later.county = d.county and later.supersedes = d.id)
    order by d.parcel, d.decided_at, d.id`.execute(tx)
  return rows.map(({ body, ...row }) => ({ ...row, ...body }))
}

async function findingsOf(tx: Tx, county: string, parcels: readonly string[]): Promise<readonly Findings[]> {
  const { rows } = await sql<Findings & { readonly record: FindingsRecord }>`
    select distinct on (f.parcel) f.id, f.parcel, f.system, f.organization, f.state, f.record, f.revision, f.amends,
      null as "amendedBy", f.created_at as "createdAt", f.changed_at as "changedAt", f.submitted_at as "submittedAt"
    from findings f
    where f.county = ${county} and f.parcel = any (${[...parcels]}::uuid[]) and f.state = 'submitted'
      and not exists (select from findings later
        where later.county = f.county and later.amends = f.id and later.state = 'submitted')
    order by f.parcel, f.inspected_on desc, f.submitted_at desc, f.id desc`.execute(tx)
  return rows
}

async function answersOf(tx: Tx, county: string, parcels: readonly string[]): Promise<readonly LastAnswer[]> {
  const { rows } = await sql<LastAnswer>`
    select r.parcel, r.inputs, r.input_hash as "inputHash", r.engine, r.result_hash as "resultHash", r.made_at as "madeAt",
      s.good_until as "goodUntil"
    from unnest(${[...parcels]}::uuid[]) as asked (parcel)
    cross join lateral (
      select * from reconciliation r
      where r.county = ${county} and r.system = asked.parcel order by r.made_at desc, r.id desc limit 1) r
    left join parcel_status s on s.county = ${county} and s.parcel = r.parcel`.execute(tx)
  return rows
}
