import type { ClientBase } from 'pg'
import { chainName } from './entry.ts'

/** How many records of one table are named before the rest is left. */
const MOST = 20

/** Compares every record of a watched table with what the audit last said of it; what differs, in words. */
export async function compareRecords(client: ClientBase, table: string): Promise<readonly string[]> {
  const { rows } = await client.query<Row>(
    `with last as (
       select distinct on (county, record) county, record, number, after_hash from audit
       where kind = $1 order by county, record, number desc)
     select county, record, last.number, last.after_hash as said, now.hash as is
     from last full join watched_records(to_regclass($1)) now using (county, record)
     where last.after_hash is distinct from now.hash
     order by county, record limit ${MOST}`,
    [table],
  )
  return rows.map((row) => differenceOf(table, row))
}

type Row = {
  readonly county: string
  readonly record: string
  readonly number: string | number | null
  readonly said: string | null
  readonly is: string | null
}

function differenceOf(table: string, { county, record, number, said, is }: Row): string {
  const what = `${table} ${record}`
  if (number === null)
    return `${what} is in no entry of ${chainName(county)}: it was put there past the audit`
  const entry = `entry ${number} of ${chainName(county)}`
  if (is === null) return `${what} is gone: by ${entry} it should be there`
  if (said === null) return `${what} is there: by ${entry} it was removed`
  return `${what} is not as ${entry} left it: it was changed past the audit`
}
