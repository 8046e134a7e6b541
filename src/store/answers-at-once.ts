import { sql } from 'kysely'
import type { PlainDate } from '../base/plain-date.ts'
import type { Actor } from './database/actor.ts'
import type { Tx } from './database/database.ts'
import { type StandingDiscrepancy, saysOf } from './discrepancies.ts'
import type { Happened } from './events.ts'
import type { StoredReconciliation } from './reconciliations.ts'
import type { DerivedStatus } from './statuses.ts'

/**
 * The answers for many parcels in a handful of statements: what one parcel's run writes, for all of them together. Of
 * parcels with a system of their own alone.
 */

/** A reconciliation with its result as it is written down: the text that was hashed is the one that is sent. */
export type WrittenReconciliation = StoredReconciliation & {
  readonly resultText: string
  readonly asBuiltOn: PlainDate
}

export async function insertReconciliations(
  tx: Tx,
  county: string,
  made: readonly WrittenReconciliation[],
): Promise<void> {
  if (made.length === 0) return
  await tx
    .insertInto('reconciliation')
    .values(
      made.map((it) => ({
        county,
        id: it.id,
        parcel: it.parcel,
        findings: it.findings,
        organization: it.organization,
        as_built_on: it.asBuiltOn,
        inputs: JSON.stringify(it.inputs),
        input_hash: it.inputHash,
        engine: it.engine,
        result: it.resultText,
        result_hash: it.resultHash,
        occasion: it.occasion,
        made_at: it.madeAt,
      })),
    )
    .execute()
}

/** Everything there ever was on these parcels; the worst of each first. */
export async function discrepanciesOnMany(
  tx: Tx,
  county: string,
  parcels: readonly string[],
): Promise<ReadonlyMap<string, readonly StandingDiscrepancy[]>> {
  const { rows } = await sql<StandingDiscrepancy>`
    select id, parcel, system, subject as key, kind, organization, severity, state, evidence_hash as "evidenceHash", reconciliation,
      body, decision, raised_at as "raisedAt", changed_at as "changedAt", revision
    from discrepancy where county = ${county} and parcel = any (${[...parcels]}::uuid[])
    order by parcel, severity_rank, raised_at, id`.execute(tx)
  return Map.groupBy(rows, ({ parcel }) => parcel)
}

const asRow = (it: StandingDiscrepancy) => ({
  id: it.id,
  parcel: it.parcel,
  kind: it.kind,
  subject: it.key,
  organization: it.organization,
  severity: it.severity,
  state: it.state,
  evidence_hash: it.evidenceHash,
  reconciliation: it.reconciliation,
  body: it.body,
  says: saysOf(it),
  decision: it.decision,
  raised_at: it.raisedAt,
  changed_at: it.changedAt,
  revision: it.revision,
})

export async function writeDiscrepancies(
  tx: Tx,
  county: string,
  inserted: readonly StandingDiscrepancy[],
  updated: readonly StandingDiscrepancy[],
): Promise<void> {
  if (inserted.length > 0) {
    await sql`
      insert into discrepancy (county, id, parcel, kind, subject, organization, severity, state, evidence_hash,
        reconciliation, body, says, raised_at, changed_at)
      select ${county}, r.* from json_to_recordset(${JSON.stringify(inserted.map(asRow))}::json) as r (id uuid, parcel uuid,
        kind text, subject text, organization uuid, severity text, state text, evidence_hash text, reconciliation uuid,
        body jsonb, says text, raised_at timestamptz, changed_at timestamptz)`.execute(tx)
  }
  if (updated.length > 0) {
    await sql`
      update discrepancy d set organization = r.organization, severity = r.severity, state = r.state,
        evidence_hash = r.evidence_hash, reconciliation = r.reconciliation, body = r.body, says = r.says,
        decision = r.decision,
        changed_at = r.changed_at, revision = r.revision
      from json_to_recordset(${JSON.stringify(updated.map(asRow))}::json) as r (id uuid, organization uuid, severity text,
        state text, evidence_hash text, reconciliation uuid, body jsonb, says text, decision uuid, changed_at timestamptz,
        revision integer)
      where d.county = ${county} and d.id = r.id`.execute(tx)
  }
}

export async function writeStatuses(
  tx: Tx,
  county: string,
  derived: readonly DerivedStatus[],
): Promise<void> {
  if (derived.length === 0) return
  const rows = derived.map(({ parcel, status, goodUntil, derivedAt }) => ({
    parcel,
    word: status.word,
    good_until: goodUntil,
    derived_at: derivedAt,
    body: status,
  }))
  await sql`
    insert into parcel_status (county, parcel, word, good_until, derived_at, body)
    select ${county}, r.* from json_to_recordset(${JSON.stringify(rows)}::json) as r (parcel uuid, word text,
      good_until date, derived_at timestamptz, body jsonb)
    on conflict (county, parcel) do update set word = excluded.word, good_until = excluded.good_until,
      derived_at = excluded.derived_at, body = excluded.body`.execute(tx)
}

/** Adds to what happened, in one actor's name. */
export async function recordEvents(tx: Tx, actor: Actor, happened: readonly Happened[]): Promise<void> {
  if (happened.length === 0) return
  const { county, account, organization, role } = actor
  const rows = happened.map((it) => ({
    id: it.id,
    kind: it.kind,
    subject_kind: it.subjectKind,
    subject: it.subject,
    parcel: it.parcel,
    before_hash: it.beforeHash ?? null,
    after_hash: it.afterHash ?? null,
    body: it.body ?? {},
    happened_at: it.at,
  }))
  await sql`
    insert into event (county, account, organization, role, id, kind, subject_kind, subject, parcel, before_hash, after_hash,
      body, happened_at)
    select ${county}, ${account}::uuid, ${organization}::uuid, ${role}, r.*
    from json_to_recordset(${JSON.stringify(rows)}::json) as r (id uuid, kind text, subject_kind text, subject uuid,
      parcel uuid, before_hash text, after_hash text, body jsonb, happened_at timestamptz)`.execute(tx)
}
