import type pg from 'pg'
import { outsideIfGone } from './database-fault.ts'

/** Functions of the database that are made to be asked without a transaction, and hold the county themselves. */
export type Askable = 'status_of'

/**
 * Asks one of them: one statement, one round trip, its plan kept on each connection. Twice as fast as the same question in
 * a transaction that first says who is asking (measured), and so only for what anybody in the county may know.
 */
export async function askOnce<Row extends object>(
  pool: pg.Pool,
  what: Askable,
  values: readonly string[],
): Promise<readonly Row[]> {
  try {
    const { rows } = await pool.query<Row>({ name: what, text: callOf(what, values), values: [...values] })
    return rows
  } catch (fault) {
    throw outsideIfGone(fault)
  }
}

export const callOf = (what: Askable, values: readonly string[]): string =>
  `select * from ${what}(${values.map((_, index) => `$${index + 1}`).join(', ')})`
