import type { Readable } from 'node:stream'
import { type Info, parse } from 'csv-parse'
import type { ImportHead } from '../../store/imports.ts'
import { boundedLines } from './bounded-lines.ts'

/** One row of a file: its line (from 1), its cells in the order of the headings, or why it can't be read. */
export type Row = {
  readonly line: number
  readonly cells: readonly string[]
  /** NDJSON: a whole entry under the key `entry`. */
  readonly entry?: unknown
  readonly broken?: string
}

/** A permit of everything that there is takes a tenth of it. */
export const LONGEST_ROW = 200_000
/** The apostrophe that the rows given back carry before what a spreadsheet would take for a formula. */
const SHIELD = /^'(?=[=+\-@])/

/** The rows of a CSV (RFC 4180, with what people make of it), from after its headings. */
export async function* csvRows(
  bytes: Readable,
  { headings, separator }: Pick<ImportHead, 'headings' | 'separator'>,
): AsyncGenerator<Row> {
  const skipped: Row[] = []
  const parser = bytes.pipe(
    parse({
      delimiter: separator,
      bom: true,
      info: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: true,
      skip_records_with_error: true,
      max_record_size: LONGEST_ROW,
      on_skip: (fault) => {
        if (!fault) return
        skipped.push({
          line: lineOf(fault as unknown as Info),
          cells: [],
          broken: 'this row cannot be read: check its quotation marks',
        })
      },
    }),
  )
  bytes.on('error', (fault) => parser.destroy(fault))
  let first = true
  for await (const { record, info } of parser as AsyncIterable<{ record: string[]; info: Info }>) {
    yield* skipped.splice(0)
    if (first) {
      first = false
      continue
    }
    const cells = record.map((cell) => cell.trim().replace(SHIELD, ''))
    if (cells.every((cell) => cell === '')) continue
    const line = info.lines
    if (cells.length > headings.length && cells.slice(headings.length).some((cell) => cell !== ''))
      yield {
        line,
        cells,
        broken: `this row has ${cells.length} cells for ${headings.length} headings`,
      }
    else yield { line, cells: headings.map((_, index) => cells[index] ?? '') }
  }
  yield* skipped
}

const lineOf = (fault: { readonly lines?: number }): number => fault.lines ?? 0

/** The rows of newline-delimited JSON: objects with plain values, or with a whole entry under `entry`. */
export async function* ndjsonRows(
  bytes: Readable,
  { headings }: Pick<ImportHead, 'headings'>,
): AsyncGenerator<Row> {
  let line = 0
  for await (const text of boundedLines(bytes, LONGEST_ROW)) {
    line += 1
    if (text.trim() === '') continue
    yield ndjsonRow(line === 1 ? text.replace(/^\ufeff/, '') : text, line, headings)
  }
}

function ndjsonRow(text: string, line: number, headings: readonly string[]): Row {
  let value: unknown
  try {
    if (text.length > LONGEST_ROW) throw new RangeError()
    value = JSON.parse(text)
  } catch {
    return { line, cells: [text.slice(0, 2000)], broken: 'this line is not JSON: write one object a line' }
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return { line, cells: [text.slice(0, 2000)], broken: 'this line is not an object with named values' }
  const { entry, ...rest } = value as Record<string, unknown>
  const strange = Object.keys(rest).find((key) => !headings.includes(key))
  if (strange !== undefined)
    return {
      line,
      cells: [text.slice(0, 2000)],
      broken: `"${strange}" is not in the first rows of the file, so it has no mapping`,
    }
  return {
    line,
    cells: headings.map((name) => jsonCell(name === 'entry' ? entry : rest[name])),
    ...(entry === undefined ? {} : { entry }),
  }
}

/** A value of a JSON row as a cell. */
export const jsonCell = (value: unknown): string =>
  value === null || value === undefined
    ? ''
    : typeof value === 'object'
      ? JSON.stringify(value)
      : String(value).trim()
