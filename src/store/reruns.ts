import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

export const RERUN_CAUSES = ['rules-changed', 'engine-changed', 'imported', 'asked-for'] as const
export type RerunCause = (typeof RERUN_CAUSES)[number]
export const RERUN_STATES = ['gathering', 'running', 'paused', 'done'] as const
export const RERUN_OUTCOMES = ['unaffected', 'same', 'changed', 'failed'] as const
export type RerunOutcome = (typeof RERUN_OUTCOMES)[number]

export type Rerun = {
  readonly id: string
  readonly cause: RerunCause
  readonly state: (typeof RERUN_STATES)[number]
  readonly revision: number
  readonly askedAt: Date
  readonly endedAt: Date | null
}

export type RerunCounts = { readonly waiting: number } & { readonly [O in RerunOutcome]: number }

const COLUMNS = ['id', 'cause', 'state', 'revision', 'asked_at as askedAt', 'ended_at as endedAt'] as const

export async function insertRerun(
  tx: Tx,
  county: string,
  rerun: Pick<Rerun, 'id' | 'cause' | 'state' | 'askedAt'> & { readonly by: string | null },
): Promise<void> {
  const { id, cause, state, askedAt, by } = rerun
  await tx.insertInto('rerun').values({ county, id, cause, state, asked_by: by, asked_at: askedAt }).execute()
}

/** Every parcel that has something a rule could speak of: a paper, an inspection, or an answer already. */
export async function gatherWholeCounty(tx: Tx, county: string, rerun: string): Promise<void> {
  await sql`
    insert into rerun_parcel (county, rerun, parcel)
    select ${county}, ${rerun}::uuid, parcel from (
      select parcel from permit where county = ${county}
      union select parcel from findings where county = ${county} and state = 'submitted'
      union select parcel from parcel_status where county = ${county}) on_file`.execute(tx)
}

export async function gatherParcels(
  tx: Tx,
  county: string,
  rerun: string,
  parcels: readonly string[],
): Promise<void> {
  if (parcels.length === 0) return
  await sql`
    insert into rerun_parcel (county, rerun, parcel)
    select ${county}, ${rerun}::uuid, parcel from unnest(${[...parcels]}::uuid[]) as parcel
    on conflict do nothing`.execute(tx)
}

export const rerunById = (tx: Tx, county: string, id: string): Promise<Rerun | undefined> =>
  tx.selectFrom('rerun').select(COLUMNS).where('county', '=', county).where('id', '=', id).executeTakeFirst()

/** Newest first, those before `before`. */
export function rerunsBefore(
  tx: Tx,
  county: string,
  before: string | undefined,
  most: number,
): Promise<readonly Rerun[]> {
  let query = tx.selectFrom('rerun').select(COLUMNS).where('county', '=', county)
  if (before !== undefined) query = query.where('id', '<', before)
  return query.orderBy('id', 'desc').limit(most).execute()
}

export async function rerunCounts(tx: Tx, county: string, rerun: string): Promise<RerunCounts> {
  const rows = await tx
    .selectFrom('rerun_parcel')
    .select((eb) => ['outcome', eb.fn.countAll<number>().as('count')])
    .where('county', '=', county)
    .where('rerun', '=', rerun)
    .groupBy('outcome')
    .execute()
  const of = (outcome: RerunOutcome | null) => rows.find((row) => row.outcome === outcome)?.count ?? 0
  return {
    waiting: of(null),
    unaffected: of('unaffected'),
    same: of('same'),
    changed: of('changed'),
    failed: of('failed'),
  }
}

/** Moves it from one of `from` to `to`; false where it was in none of them. */
export async function moveRerun(
  tx: Tx,
  county: string,
  id: string,
  from: readonly Rerun['state'][],
  to: Rerun['state'],
  at: Date,
): Promise<boolean> {
  const { numUpdatedRows } = await tx
    .updateTable('rerun')
    .set((eb) => ({ state: to, revision: eb('revision', '+', 1), ended_at: to === 'done' ? at : null }))
    .where('county', '=', county)
    .where('id', '=', id)
    .where('state', 'in', from)
    .executeTakeFirst()
  return numUpdatedRows > 0n
}

/**
 * Some parcels that still wait and that no other process has taken; none where it is paused or done. They stay taken
 * until the transaction ends: when it is undone, they wait again.
 */
export async function takeWaiting(
  tx: Tx,
  county: string,
  rerun: string,
  most: number,
): Promise<readonly string[]> {
  const { rows } = await sql<{ parcel: string }>`
    select w.parcel from rerun_parcel w
    where w.county = ${county} and w.rerun = ${rerun} and w.outcome is null
      and exists (select from rerun r where r.county = ${county} and r.id = ${rerun} and r.state = 'running')
    order by w.parcel limit ${most} for update of w skip locked`.execute(tx)
  return rows.map(({ parcel }) => parcel)
}

export type ParcelOutcome = {
  readonly parcel: string
  readonly outcome: RerunOutcome
  readonly says: string | null
}

export async function noteOutcomes(
  tx: Tx,
  county: string,
  rerun: string,
  outcomes: readonly ParcelOutcome[],
): Promise<void> {
  await sql`
    update rerun_parcel w set outcome = o.outcome, says = o.says
    from json_to_recordset(${JSON.stringify(outcomes)}::json) as o (parcel uuid, outcome text, says text)
    where w.county = ${county} and w.rerun = ${rerun} and w.parcel = o.parcel`.execute(tx)
}

export type RerunLine = ParcelOutcome & { readonly number: string }

/** The parcels of one outcome in the order of their ids, those after `after`. */
export async function rerunParcels(
  tx: Tx,
  county: string,
  rerun: string,
  outcome: RerunOutcome,
  after: string | undefined,
  most: number,
): Promise<readonly RerunLine[]> {
  let query = tx
    .selectFrom('rerun_parcel as w')
    .innerJoin('parcel as p', (join) =>
      join.onRef('p.county', '=', 'w.county').onRef('p.id', '=', 'w.parcel'),
    )
    .select(['w.parcel', 'w.says', 'p.number'])
    .where('w.county', '=', county)
    .where('w.rerun', '=', rerun)
    .where('w.outcome', '=', outcome)
  if (after !== undefined) query = query.where('w.parcel', '>', after)
  const rows = await query.orderBy('w.parcel').limit(most).execute()
  return rows.map((row) => ({ ...row, outcome }))
}
