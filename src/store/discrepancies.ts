import type { DiscrepancyKind, Severity } from '../reconcile/kinds.ts'
import type { DiscrepancyState } from '../reconcile/projection.ts'
import type { Discrepancy } from '../reconcile/reconcile.ts'
import { discrepancyWords } from '../words/follow-up.ts'
import type { Tx } from './database/database.ts'
import { ofSystem } from './of-system.ts'
import { ofParcel, type QueueFilter, type QueueKey, queueHeads } from './queue-heads.ts'
import { RANKS } from './queue-ranks.ts'

/** A difference as it stands now. */
export type StandingDiscrepancy = {
  readonly id: string
  readonly parcel: string
  readonly system: string
  readonly key: string
  readonly kind: DiscrepancyKind
  readonly organization: string | null
  readonly severity: Severity
  readonly state: DiscrepancyState
  readonly evidenceHash: string
  /** The newest reconciliation that raised it. */
  readonly reconciliation: string
  readonly body: Discrepancy
  readonly decision: string | null
  readonly raisedAt: Date
  readonly changedAt: Date
  readonly revision: number
}

export type InQueue = StandingDiscrepancy & {
  readonly parcelNumber: string
  readonly parcelAddress: string | null
}

export const queueKeyOf = ({ severity, raisedAt, id }: StandingDiscrepancy): QueueKey => ({
  rank: RANKS[severity],
  raisedAt,
  id,
})

/** For exports and nothing else: written with the row and never read back. */
export const saysOf = ({ body }: Pick<StandingDiscrepancy, 'body'>): string =>
  discrepancyWords(body, 'reviewer')

const COLUMNS = [
  'd.id',
  'd.parcel',
  'd.system',
  'd.subject as key',
  'd.kind',
  'd.organization',
  'd.severity',
  'd.state',
  'd.evidence_hash as evidenceHash',
  'd.reconciliation',
  'd.body',
  'd.decision',
  'd.raised_at as raisedAt',
  'd.changed_at as changedAt',
  'd.revision',
] as const

type Row = Omit<StandingDiscrepancy, 'kind' | 'body'> & { readonly kind: string; readonly body: unknown }
const asStanding = <R extends Row>(row: R) => ({
  ...row,
  kind: row.kind as DiscrepancyKind,
  body: row.body as Discrepancy,
})

/** Every one there ever was on a system, as far as the asker may see them; worst first. */
export async function discrepanciesOf(
  tx: Tx,
  county: string,
  system: string,
): Promise<readonly StandingDiscrepancy[]> {
  const rows = await tx
    .selectFrom('discrepancy as d')
    .select(COLUMNS)
    .where('d.county', '=', county)
    .where('d.system', '=', system)
    .orderBy('d.severity_rank')
    .orderBy('d.raised_at')
    .orderBy('d.id')
    .execute()
  return rows.map(asStanding)
}

export async function discrepancyById(
  tx: Tx,
  county: string,
  id: string,
): Promise<StandingDiscrepancy | undefined> {
  const row = await tx
    .selectFrom('discrepancy as d')
    .select(COLUMNS)
    .where('d.county', '=', county)
    .where('d.id', '=', id)
    .executeTakeFirst()
  return row && asStanding(row)
}

function filtered(tx: Tx, county: string, filter: QueueFilter) {
  const { states, kinds, severities, since, parcel } = filter
  let query = tx
    .selectFrom('discrepancy as d')
    .innerJoin('parcel as p', (join) =>
      join.onRef('p.county', '=', 'd.county').onRef('p.id', '=', 'd.parcel'),
    )
    .where('d.county', '=', county)
  if (states.length > 0) query = query.where('d.state', 'in', states)
  if (kinds.length > 0) query = query.where('d.kind', 'in', kinds)
  if (severities.length > 0) query = query.where('d.severity', 'in', severities)
  if (since) query = query.where('d.changed_at', '>=', since)
  if (parcel) query = query.where(ofParcel(parcel))
  return query
}

export async function discrepancyQueue(
  tx: Tx,
  county: string,
  filter: QueueFilter,
  after: QueueKey | undefined,
  most: number,
): Promise<readonly InQueue[]> {
  const query = filtered(tx, county, NOTHING_ASKED)
    .select([...COLUMNS, 'p.number as parcelNumber', 'p.address as parcelAddress'])
    .where('d.id', 'in', queueHeads(county, filter, after, most))
  const rows = await query.orderBy('d.severity_rank').orderBy('d.raised_at').orderBy('d.id').execute()
  return rows.map(asStanding)
}

const NOTHING_ASKED: QueueFilter = {
  states: [],
  kinds: [],
  severities: [],
  since: undefined,
  parcel: undefined,
}

/** How many of each severity pass the filter. */
export async function queueCounts(
  tx: Tx,
  county: string,
  filter: QueueFilter,
): Promise<{ readonly [S in Severity]: number }> {
  const rows = await filtered(tx, county, filter)
    .select(['d.severity', (eb) => eb.fn.countAll<number>().as('count')])
    .groupBy('d.severity')
    .execute()
  const of = (severity: Severity) => rows.find((row) => row.severity === severity)?.count ?? 0
  return { action: of('action'), review: of('review'), note: of('note') }
}

export async function insertDiscrepancy(
  tx: Tx,
  county: string,
  made: Omit<StandingDiscrepancy, 'revision' | 'decision'>,
): Promise<void> {
  await tx
    .insertInto('discrepancy')
    .values({
      county,
      id: made.id,
      parcel: made.parcel,
      of_system: ofSystem(made),
      kind: made.kind,
      subject: made.key,
      organization: made.organization,
      severity: made.severity,
      state: made.state,
      evidence_hash: made.evidenceHash,
      reconciliation: made.reconciliation,
      body: JSON.stringify(made.body),
      says: saysOf(made),
      decision: null,
      raised_at: made.raisedAt,
      changed_at: made.changedAt,
    })
    .execute()
}

/** Writes it as it now stands; the caller has counted its revision up. */
export async function updateDiscrepancy(tx: Tx, county: string, now: StandingDiscrepancy): Promise<void> {
  await tx
    .updateTable('discrepancy')
    .set({
      organization: now.organization,
      severity: now.severity,
      state: now.state,
      evidence_hash: now.evidenceHash,
      reconciliation: now.reconciliation,
      body: JSON.stringify(now.body),
      says: saysOf(now),
      decision: now.decision,
      changed_at: now.changedAt,
      revision: now.revision,
    })
    .where('county', '=', county)
    .where('id', '=', now.id)
    .execute()
}
