/** A column of an export: its name, and the SQL that gives it. The one description serves CSV, NDJSON and GeoJSON. */
export type ExportColumn = {
  readonly name: string
  readonly sql: string
  /** `text` is made safe for spreadsheets in a CSV; a `list` is joined there with `;` and stays a list in JSON. */
  readonly as: 'text' | 'plain' | 'list'
}

/** What is exported: rows in a stable order. Nothing in it comes from a request; who sees what, the policies say. */
export type ExportTable = {
  readonly id: string
  readonly columns: readonly ExportColumn[]
  readonly from: string
  readonly order: string
  /** SQL for the position as a GeoJSON geometry, null where none is known. */
  readonly geometry: string
}

export const text = (name: string, sql: string): ExportColumn => ({ name, sql, as: 'text' })
export const plain = (name: string, sql: string): ExportColumn => ({ name, sql, as: 'plain' })
export const list = (name: string, sql: string): ExportColumn => ({ name, sql, as: 'list' })

/** An instant as ISO 8601 in UTC. */
export const instant = (sql: string): string =>
  `to_char(${sql} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`

const FORMULA = String.raw`'^[\s\u00a0\ufeff]*[=+@\uff1d\uff0b\uff0d\uff20\t\r\n-]'`
const FIGURE = String.raw`'^[+-]?\d+(\.\d+)?$'`

/**
 * A text as a cell that somebody will open in a spreadsheet: what would be taken for a formula or a command gets an
 * apostrophe before it. In SQL what `csvCell` of base/ is; a test holds the two together.
 */
export const csvText = (sql: string): string =>
  `case when (${sql}) ~ ${FORMULA} and (${sql}) !~ ${FIGURE} then '''' || (${sql}) else ${sql} end`

export function csvQuery({ columns, from, order }: ExportTable): string {
  const cells = columns.map(({ name, sql, as }) => {
    const cell = as === 'plain' ? sql : csvText(as === 'text' ? sql : `array_to_string(${sql}, '; ')`)
    return `${cell} as "${name}"`
  })
  return `select ${cells.join(', ')} from ${from} order by ${order}`
}

const asObject = (columns: readonly ExportColumn[]): string =>
  `json_build_object(${columns.map(({ name, sql }) => `'${name}', ${sql}`).join(', ')})`

/** A JSON object on each line. */
export const ndjsonQuery = ({ columns, from, order }: ExportTable): string =>
  `select ${asObject(columns)} from ${from} order by ${order}`

/**
 * The features of a collection (RFC 7946), one on each line, with a comma before all but the first. What has no known
 * position has a null geometry, which is the standard's own way of saying so (3.2).
 */
export function featuresQuery({ id, columns, from, order, geometry }: ExportTable): string {
  const feature = `json_build_object('type', 'Feature', 'id', ${id}, 'geometry', ${geometry}, 'properties', ${asObject(columns)})`
  return `select case when row_number() over (order by ${order}) = 1 then '' else ',' end || ${feature}::text
    from ${from} order by ${order}`
}
