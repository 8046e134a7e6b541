import { csvCell } from '../../base/csv-cell.ts'
import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Rejection, type RowFault, rejectionsAfter } from '../../store/import-rejections.ts'
import { type Import, importById, importsBefore } from '../../store/imports.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'
import { ADDED_COLUMNS } from './propose-mapping.ts'

type Context = Pick<OperationContext, 'database'>

export const readImport = (context: Context, actor: Person, id: string): Promise<Answer<Import>> =>
  transact(context.database, actor, async (tx) => {
    const it = await importById(tx, actor.county, id)
    return it ? ok(it) : notFound()
  })

/** Newest first. */
export const listImports = (
  context: Context,
  actor: Person,
  before: string | undefined,
  most: number,
): Promise<readonly Import[]> =>
  transact(context.database, actor, (tx) => importsBefore(tx, actor.county, before, most))

/** The rows that were not taken, in the order of the file. */
export const listRejections = (
  context: Context,
  actor: Person,
  asked: { readonly id: string; readonly after: number; readonly most: number },
): Promise<Answer<readonly Rejection[]>> =>
  transact(context.database, actor, async (tx) => {
    const it = await importById(tx, actor.county, asked.id)
    if (!it) return notFound()
    return ok(await rejectionsAfter(tx, actor.county, asked.id, asked.after, asked.most))
  })

const AT_ONCE = 500

/**
 * The same as a file in the form it came in, to be fixed and uploaded again: the rows as they were, with their line and
 * what to fix in two more columns, which are skipped when they come back.
 */
export async function* rejectedRows(context: Context, actor: Person, it: Import): AsyncGenerator<string> {
  const asLine = it.format === 'csv' ? csvLine(it) : ndjsonLine(it)
  const own = it.head.headings.filter((heading) => !(ADDED_COLUMNS as readonly string[]).includes(heading))
  if (it.format === 'csv') yield `${[...own, ...ADDED_COLUMNS].map(csvCell).join(it.head.separator)}\r\n`
  for (let after = 0; ; ) {
    const rows = await transact(context.database, actor, (tx) =>
      rejectionsAfter(tx, actor.county, it.id, after, AT_ONCE),
    )
    if (rows.length === 0) return
    yield rows.map(asLine).join('')
    after = rows.at(-1)!.line
  }
}

const csvLine =
  ({ head }: Import) =>
  ({ line, cells, faults }: Rejection): string => {
    const own = cells.filter(
      (_, index) => !(ADDED_COLUMNS as readonly string[]).includes(head.headings[index] ?? ''),
    )
    const all = [...own, String(line), faults.map(sayFault).join('; ')]
    return `${all.map((cell) => quotedFor(head.separator, csvCell(cell))).join(head.separator)}\r\n`
  }

/** `csvCell` quotes what a comma would part; another separator needs the same. */
const quotedFor = (separator: string, cell: string): string =>
  !cell.startsWith('"') && cell.includes(separator) ? `"${cell}"` : cell

const ndjsonLine =
  ({ head }: Import) =>
  ({ line, cells, faults }: Rejection): string => {
    const own = head.headings.flatMap((name, index) => {
      const cell = cells[index] ?? ''
      return cell === '' || (ADDED_COLUMNS as readonly string[]).includes(name) ? [] : [[name, asValue(cell)]]
    })
    const row =
      cells.length < head.headings.length && cells.length === 1 ? { text: cells[0] } : Object.fromEntries(own)
    return `${JSON.stringify({ ...row, line, 'to fix': faults.map(sayFault).join('; ') })}\n`
  }

function asValue(cell: string): unknown {
  if (!/^[[{]/.test(cell)) return cell
  try {
    return JSON.parse(cell)
  } catch {
    return cell
  }
}

export const sayFault = ({ column, had, wants }: RowFault): string =>
  `${column ?? 'the row'}${had === null ? '' : ` ("${had.slice(0, 60)}")`}: ${wants}`
