import type { Readable } from 'node:stream'
import { parse } from 'csv-parse/sync'
import type { ImportHead } from '../../store/imports.ts'
import { boundedLines } from './bounded-lines.ts'
import { csvRows, jsonCell, LONGEST_ROW } from './read-rows.ts'

const SAMPLE_ROWS = 20
/** Enough to see how a file is separated and what its first line says. */
const START_BYTES = 65_536
const MOST_COLUMNS = 300
const LONGEST_HEADING = 500
/** Of a cell, what tells its kind: dates and figures are short. */
const LONGEST_SAMPLE = 500

/** How a file begins, or in words why it is none. `open` gives its bytes from the beginning. */
export const readHead = (
  open: () => Promise<Readable>,
  format: 'csv' | 'ndjson',
): Promise<ImportHead | string> => (format === 'csv' ? csvHead(open) : ndjsonHead(open))

async function csvHead(open: () => Promise<Readable>): Promise<ImportHead | string> {
  const start = await startOf(await open())
  if (start.includes('\ufffd')) return 'is not UTF-8: save it as "CSV UTF-8"'
  if (start.includes('\u0000')) return 'is not text'
  const separator = separatorOf(start)
  const headings = firstRecord(start, separator)
  if (headings.length === 0) return 'is empty: its first line has to name the columns'
  if (headings.length > MOST_COLUMNS) return `has more than ${MOST_COLUMNS} columns`
  if (headings.some((heading) => heading.length > LONGEST_HEADING))
    return `has a heading of more than ${LONGEST_HEADING} characters`
  const unnamed = headings.indexOf('')
  if (unnamed !== -1) return `has no heading for column ${unnamed + 1}: its first line must name the columns`
  const twice = headings.find((heading, index) => headings.indexOf(heading) !== index)
  if (twice !== undefined) return `has two columns headed "${twice}"`
  const sample: (readonly string[])[] = []
  const bytes = await open()
  for await (const row of csvRows(bytes, { headings, separator })) {
    if (row.broken === undefined) sample.push(row.cells.map(short))
    if (sample.length === SAMPLE_ROWS) break
  }
  bytes.destroy()
  return { headings, separator, sample }
}

const short = (cell: string): string => cell.slice(0, LONGEST_SAMPLE)

async function startOf(bytes: Readable): Promise<string> {
  const chunks: Buffer[] = []
  let size = 0
  for await (const chunk of bytes as AsyncIterable<Buffer>) {
    chunks.push(chunk)
    size += chunk.length
    if (size >= START_BYTES) break
  }
  bytes.destroy()
  // `stream`: a character cut in two at the end is no fault.
  return new TextDecoder().decode(Buffer.concat(chunks), { stream: size >= START_BYTES })
}

/** The sign that stands most often in the first line, outside quotation marks. */
function separatorOf(start: string): string {
  const line = start.split(/\r?\n/, 1)[0]!.replaceAll(/"[^"]*"/g, '')
  const count = (sign: string) => line.split(sign).length - 1
  return [',', ';', '\t', '|'].reduce((best, sign) => (count(sign) > count(best) ? sign : best))
}

function firstRecord(start: string, delimiter: string): readonly string[] {
  const options = { delimiter, bom: true, to: 1, relax_quotes: true, relax_column_count: true } as const
  const [headings = []] = parse(start, { ...options, skip_empty_lines: true }) as string[][]
  const named = headings.map((heading) => heading.trim())
  // A spreadsheet that was wider once leaves empty headings behind.
  return named.slice(0, named.findLastIndex((heading) => heading !== '') + 1)
}

async function ndjsonHead(open: () => Promise<Readable>): Promise<ImportHead | string> {
  const names = new Set<string>()
  const rows: Record<string, unknown>[] = []
  const bytes = await open()
  for await (const text of boundedLines(bytes, LONGEST_ROW)) {
    if (text.trim() === '') continue
    if (text.length > LONGEST_ROW) return `has a line of more than ${LONGEST_ROW} characters`
    const value = asObject(text.replace(/^\ufeff/, ''))
    if (value === undefined && rows.length === 0)
      return 'is not newline-delimited JSON: its first line is no JSON object'
    if (value === undefined) continue
    for (const name of Object.keys(value)) names.add(name)
    rows.push(value)
    if (rows.length === SAMPLE_ROWS * 5) break
  }
  bytes.destroy()
  if (names.size === 0) return 'is empty'
  if (names.size > MOST_COLUMNS) return `names more than ${MOST_COLUMNS} values`
  if ([...names].some((name) => name.length > LONGEST_HEADING))
    return `has a name of more than ${LONGEST_HEADING} characters`
  const headings = [...names]
  const sample = rows.slice(0, SAMPLE_ROWS).map((row) => headings.map((name) => short(jsonCell(row[name]))))
  return { headings, separator: '', sample }
}

function asObject(text: string): Record<string, unknown> | undefined {
  try {
    const value: unknown = JSON.parse(text)
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : undefined
  } catch {
    return undefined
  }
}
