import type { ClientBase } from 'pg'
import { invariant } from '../base/invariant.ts'
import type { TableShape } from './manifest.ts'

/** Every table but the record of migrations, in an order in which they can be filled: what is referred to comes first. */
export async function tablesIn(client: ClientBase): Promise<readonly TableShape[]> {
  const { rows } = await client.query<TableShape & { refers: string[] }>(`
    select c.relname::text as name,
      array(select a.attname::text from pg_attribute a
        where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = ''
        order by a.attnum) as columns,
      array(select a.attname::text from pg_index i cross join unnest(i.indkey) with ordinality as k (number, place)
        join pg_attribute a on a.attrelid = i.indrelid and a.attnum = k.number
        where i.indrelid = c.oid and i.indisprimary order by k.place) as key,
      array(select distinct f.relname::text from pg_constraint r join pg_class f on f.oid = r.confrelid
        where r.conrelid = c.oid and r.contype = 'f' and r.confrelid <> c.oid) as refers
    from pg_class c
    where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and c.relname <> 'migration'
    order by c.relname collate "C"`)
  const placed: TableShape[] = []
  const waiting = new Set(rows)
  while (waiting.size > 0) {
    const free = [...waiting].filter(
      ({ refers }) => !rows.some((it) => waiting.has(it) && refers.includes(it.name)),
    )
    invariant(
      free.length > 0,
      'tables that refer to each other in a circle can’t be filled one after the other',
    )
    for (const { name, columns, key } of free) placed.push({ name, columns, key })
    for (const table of free) waiting.delete(table)
  }
  return placed
}

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ')

/** All rows, in an order that no locale of the server changes. */
export const copyOut = ({ name, columns, key }: TableShape, collated: ReadonlySet<string>): string => {
  const order = key.map((column) => `"${column}"${collated.has(`${name}.${column}`) ? ' collate "C"' : ''}`)
  const by = order.length > 0 ? ` order by ${order.join(', ')}` : ''
  return `copy (select ${quoted(columns)} from "${name}"${by}) to stdout`
}

export const copyIn = ({ name, columns }: TableShape): string =>
  `copy "${name}" (${quoted(columns)}) from stdin`

/** Columns of text, as `table.column`: their order depends on the server unless it is told. */
export async function textColumns(client: ClientBase): Promise<ReadonlySet<string>> {
  const { rows } = await client.query<{ name: string }>(`
    select c.relname || '.' || a.attname as name from pg_attribute a join pg_class c on c.oid = a.attrelid
    where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and a.attnum > 0 and a.attcollation <> 0`)
  return new Set(rows.map(({ name }) => name))
}

/** Values are written the same by every server and for every user. */
export const AS_TEXT = `
  set local datestyle = 'ISO, YMD'; set local intervalstyle = 'postgres'; set local timezone = 'UTC';
  set local bytea_output = 'hex'; set local extra_float_digits = 1; set local client_encoding = 'UTF8'`
