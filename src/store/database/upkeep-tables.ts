import type { ColumnType, Generated } from 'kysely'
import type { Instant } from './column.ts'

/** What the service looks after by itself, over all counties; the owner alone reads and writes it. */
export type UpkeepTables = {
  readonly original_fault: { hash: string; state: 'damaged' | 'missing'; found_at: Instant }
  readonly original_round: { one: Generated<boolean>; ended_at: ColumnType<Date, Date, Date>; looked: number }
  readonly audit_noting: { one: Generated<boolean>; noted_at: ColumnType<Date, Date, Date>; faults: number }
  readonly audit_break: {
    number: Generated<number>
    noted_at: Generated<Date>
    says: string
  }
}
