import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

/** One thing wrong with a row: in which column, what stands there, and what should. */
export type RowFault = {
  /** Null where it is about the row as a whole. */
  readonly column: string | null
  readonly had: string | null
  readonly wants: string
}

/** A row that was not taken: whole, as it came, and all that is wrong with it. Lines count from 1, headings included. */
export type Rejection = {
  readonly line: number
  readonly cells: readonly string[]
  readonly faults: readonly RowFault[]
}

export async function keepRejections(
  tx: Tx,
  county: string,
  id: string,
  rejections: readonly Rejection[],
): Promise<void> {
  if (rejections.length === 0) return
  await sql`
    insert into import_rejection (county, import, line, cells, faults)
    select ${county}, ${id}::uuid, r.line, r.cells, r.faults
    from jsonb_to_recordset(${JSON.stringify(rejections)}::jsonb) as r (line bigint, cells jsonb, faults jsonb)
    on conflict do nothing`.execute(tx)
}

export async function forgetRejections(tx: Tx, county: string, id: string): Promise<void> {
  await tx.deleteFrom('import_rejection').where('county', '=', county).where('import', '=', id).execute()
}

/** In the order of the file, those after the line `after`. */
export async function rejectionsAfter(
  tx: Tx,
  county: string,
  id: string,
  after: number,
  most: number,
): Promise<readonly Rejection[]> {
  const rows = await tx
    .selectFrom('import_rejection')
    .select(['line', 'cells', 'faults'])
    .where('county', '=', county)
    .where('import', '=', id)
    .where('line', '>', after)
    .orderBy('line')
    .limit(most)
    .execute()
  return rows.map((row) => ({
    line: row.line,
    cells: row.cells as readonly string[],
    faults: row.faults as readonly RowFault[],
  }))
}
