import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

/** Counts a use of the day for the asker's organization; false, and not counted, where it would be more than `most`. */
export async function spendQuota(tx: Tx, what: string, amount: number, most: number): Promise<boolean> {
  const { rows } = await sql<{ total: number | null }>`
    select spend_quota(${what}, ${amount}::bigint, ${most}::bigint) as total`.execute(tx)
  return rows[0]?.total !== null
}

/** How many the asker's organization has. */
export async function standingQuota(tx: Tx, what: string): Promise<number> {
  const { rows } = await sql<{ count: number }>`select standing_quota(${what}) as count`.execute(tx)
  return rows[0]?.count ?? 0
}
