import type { Readable } from 'node:stream'
import type pg from 'pg'
import { to as copyTo } from 'pg-copy-streams'
import { outsideIfGone } from './database-fault.ts'

/** How each row leaves: a line of CSV with headings first, or the one text column as it is. */
export type CopyForm = 'csv' | 'lines'

/**
 * Quotes and separators that no JSON text holds, so that a line of JSON leaves as it is; COPY's own text form would
 * double its backslashes.
 */
const FORMS: { readonly [F in CopyForm]: string } = {
  csv: 'format csv, header',
  lines: `format csv, quote e'\\x01', delimiter e'\\x02'`,
}

/** A reader may be slow; a reader that is gone closes the stream. */
const LONGEST = '1h'

/**
 * The rows of a query as bytes, as they were at one moment, whatever is written meanwhile: it is one statement. Of the
 * rows only what is under way is in memory. Throws OutsideFailure when it can't begin; a fault later breaks the stream.
 */
export async function copyOut(
  pool: pg.Pool,
  settings: string,
  query: string,
  form: CopyForm,
): Promise<Readable> {
  let client: pg.PoolClient | undefined
  try {
    client = await pool.connect()
    await client.query(`begin read only; ${settings}; set local statement_timeout = '${LONGEST}'`)
  } catch (fault) {
    client?.release(true)
    throw outsideIfGone(fault)
  }
  const held = client
  const rows = held.query(copyTo(`copy (${query}) to stdout with (${FORMS[form]})`))
  let over = false
  const release = (broken: boolean) => {
    if (over) return
    over = true
    held.release(broken)
  }
  // A connection that is lost while rows leave over it ends the rows, and not the process.
  const lost = (fault: Error) => void rows.destroy(fault)
  held.on('error', lost)
  rows.once('end', () => {
    held.off('error', lost)
    held.query('commit').then(
      () => release(false),
      () => release(true),
    )
  })
  // Broken off, by the database or by whoever read it: what is left goes with the connection.
  rows.once('error', () => release(true))
  rows.once('close', () => {
    if (!rows.readableEnded) release(true)
  })
  return rows
}
