import type pg from 'pg'
import { outsideIfGone } from './database-fault.ts'

/** A question of one statement. A name lets PostgreSQL keep its plan on each connection; one name, one text. */
export type Question = { readonly name: string; readonly text: string; readonly values: readonly unknown[] }

/**
 * A transaction of one statement, sent whole before anything of it is answered: opening, question and end travel
 * together on a pipelined connection, so that a read costs one round trip and is held by row-level security all the same.
 */
export async function askOnce<Row extends object>(
  pool: pg.Pool,
  opening: string,
  { name, text, values }: Question,
): Promise<readonly Row[]> {
  let client: pg.PoolClient | undefined
  try {
    client = await pool.connect()
    const begun = client.query(opening)
    const asked = client.query<Row>({ name, text, values: [...values] })
    // After a fault this undoes; there is nothing to undo in a read.
    const ended = client.query('commit')
    // The first fault is the reason for those after it.
    begun.catch(() => {})
    asked.catch(() => {})
    ended.catch(() => {})
    await begun
    const { rows } = await asked
    await ended
    client.release()
    return rows
  } catch (fault) {
    // What is still under way on it is nobody's to wait for.
    client?.release(true)
    throw outsideIfGone(fault)
  }
}
