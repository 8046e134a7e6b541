import type { DiscrepancyKind } from '../reconcile/kinds.ts'
import type { DiscrepancyChange, DiscrepancyState } from '../reconcile/projection.ts'
import type { Reason } from '../reconcile/reason.ts'
import type { Part } from '../records/part.ts'
import type { Tx } from './database/database.ts'

/** What one reconciliation changed about one discrepancy. */
export type ChangeNoticed = {
  readonly id: string
  readonly parcel: string
  readonly discrepancy: string
  readonly reconciliation: string
  readonly change: DiscrepancyChange
  readonly beforeHash: string | null
  readonly afterHash: string | null
  readonly body: ChangeTold
  readonly noticedAt: Date
}

/** The change: the reason before, the reason now, and whether a decision's ground has moved. */
export type ChangeTold = {
  readonly kind: DiscrepancyKind
  readonly about: Part
  readonly before: Reason | null
  readonly after: Reason | null
  readonly state: DiscrepancyState
}

export async function insertChanges(
  tx: Tx,
  county: string,
  changes: readonly ChangeNoticed[],
): Promise<void> {
  if (changes.length === 0) return
  await tx
    .insertInto('discrepancy_change')
    .values(
      changes.map(({ id, parcel, discrepancy, reconciliation, change, ...rest }) => ({
        county,
        id,
        parcel,
        discrepancy,
        reconciliation,
        change,
        before_hash: rest.beforeHash,
        after_hash: rest.afterHash,
        body: JSON.stringify(rest.body),
        noticed_at: rest.noticedAt,
      })),
    )
    .execute()
}

const CHANGE_COLUMNS = [
  'id',
  'parcel',
  'discrepancy',
  'reconciliation',
  'change',
  'before_hash as beforeHash',
  'after_hash as afterHash',
  'body',
  'noticed_at as noticedAt',
] as const

export const changesBy = (tx: Tx, county: string, reconciliation: string) =>
  changes(tx, county, 'reconciliation', reconciliation)

export const changesOf = (tx: Tx, county: string, discrepancy: string) =>
  changes(tx, county, 'discrepancy', discrepancy)

/** All that was ever noticed on a system. */
export async function changesOn(tx: Tx, county: string, system: string): Promise<readonly ChangeNoticed[]> {
  const rows = await tx
    .selectFrom('discrepancy_change')
    .select(CHANGE_COLUMNS)
    .where('county', '=', county)
    .where('discrepancy', 'in', (eb) =>
      eb.selectFrom('discrepancy').select('id').where('county', '=', county).where('system', '=', system),
    )
    .orderBy('id')
    .execute()
  return rows.map((row) => ({ ...row, body: row.body as ChangeTold }))
}

async function changes(
  tx: Tx,
  county: string,
  column: 'reconciliation' | 'discrepancy',
  id: string,
): Promise<readonly ChangeNoticed[]> {
  const rows = await tx
    .selectFrom('discrepancy_change')
    .select(CHANGE_COLUMNS)
    .where('county', '=', county)
    .where(column, '=', id)
    .orderBy('id')
    .execute()
  return rows.map((row) => ({ ...row, body: row.body as ChangeTold }))
}
