import type { Tx } from './database/database.ts'

export const IMPORT_KINDS = ['permits', 'parcels', 'findings'] as const
export type ImportKind = (typeof IMPORT_KINDS)[number]
export const IMPORT_STATES = ['waiting', 'trying', 'tried', 'running', 'done', 'failed'] as const
export type ImportState = (typeof IMPORT_STATES)[number]

/** What one column of the file means. */
export type ColumnMeaning = {
  readonly column: string
  /** What it fills; null where it is skipped. */
  readonly to: string | null
  /** Put behind a bare figure: `gal` makes 1000 to 1000 gal. */
  readonly unit: string | null
  /** What the file's own words stand for, where they are not ours: `NEW INST` is `new`. */
  readonly values: { readonly [written: string]: string }
}

export type Mapping = {
  readonly columns: readonly ColumnMeaning[]
  /** What holds for every row that does not say otherwise. */
  readonly always: { readonly [to: string]: string }
}

/** How a file begins: its headings (for NDJSON: the keys of its first rows) and its first rows. */
export type ImportHead = {
  readonly headings: readonly string[]
  readonly separator: string
  readonly sample: readonly (readonly string[])[]
}

export type ImportCounts = {
  readonly rowsRead: number
  readonly readToLine: number
  readonly added: number
  readonly changed: number
  readonly unchanged: number
  readonly rejected: number
}

export type Import = ImportCounts & {
  readonly id: string
  readonly kind: ImportKind
  readonly format: 'csv' | 'ndjson'
  readonly contentHash: string
  readonly bytes: number
  readonly fileName: string | null
  readonly head: ImportHead
  readonly mapping: Mapping
  readonly state: ImportState
  readonly reason: string | null
  readonly job: string | null
  readonly rerun: string | null
  readonly revision: number
  readonly madeBy: string
  readonly madeAt: Date
  readonly endedAt: Date | null
}

const COLUMNS = [
  'id',
  'kind',
  'format',
  'content_hash as contentHash',
  'bytes',
  'file_name as fileName',
  'head',
  'mapping',
  'state',
  'reason',
  'job',
  'rerun',
  'rows_read as rowsRead',
  'read_to_line as readToLine',
  'added',
  'changed',
  'unchanged',
  'rejected',
  'revision',
  'made_by as madeBy',
  'made_at as madeAt',
  'ended_at as endedAt',
] as const

type Row = Omit<Import, 'head' | 'mapping'> & { readonly head: unknown; readonly mapping: unknown }
const asImport = (row: Row): Import => ({
  ...row,
  head: row.head as ImportHead,
  mapping: row.mapping as Mapping,
})

export type NewImport = Omit<
  Import,
  keyof ImportCounts | 'state' | 'reason' | 'job' | 'rerun' | 'revision' | 'endedAt'
>

export async function insertImport(tx: Tx, county: string, made: NewImport): Promise<void> {
  await tx
    .insertInto('import')
    .values({
      county,
      id: made.id,
      kind: made.kind,
      format: made.format,
      content_hash: made.contentHash,
      bytes: made.bytes,
      file_name: made.fileName,
      head: JSON.stringify(made.head),
      mapping: JSON.stringify(made.mapping),
      state: 'waiting',
      made_by: made.madeBy,
      made_at: made.madeAt,
    })
    .execute()
}

export async function importById(tx: Tx, county: string, id: string): Promise<Import | undefined> {
  const row = await tx
    .selectFrom('import')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()
  return row && asImport(row)
}

/** The same, held until the transaction ends. */
export async function lockImport(tx: Tx, county: string, id: string): Promise<Import | undefined> {
  const row = await tx
    .selectFrom('import')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('id', '=', id)
    .forUpdate()
    .executeTakeFirst()
  return row && asImport(row)
}

/** Newest first, those before `before`. */
export async function importsBefore(
  tx: Tx,
  county: string,
  before: string | undefined,
  most: number,
): Promise<readonly Import[]> {
  let query = tx.selectFrom('import').select(COLUMNS).where('county', '=', county)
  if (before !== undefined) query = query.where('id', '<', before)
  return (await query.orderBy('id', 'desc').limit(most).execute()).map(asImport)
}

type Change = Partial<
  Pick<Import, 'mapping' | 'state' | 'reason' | 'job' | 'rerun' | 'endedAt'> & ImportCounts
>

/** Writes what is given and counts the revision up. */
export async function changeImport(tx: Tx, county: string, id: string, change: Change): Promise<void> {
  const { mapping, endedAt, rowsRead, readToLine, ...same } = change
  await tx
    .updateTable('import')
    .set((eb) => ({
      ...same,
      ...(mapping === undefined ? {} : { mapping: JSON.stringify(mapping) }),
      ...(endedAt === undefined ? {} : { ended_at: endedAt }),
      ...(rowsRead === undefined ? {} : { rows_read: rowsRead }),
      ...(readToLine === undefined ? {} : { read_to_line: readToLine }),
      revision: eb('revision', '+', 1),
    }))
    .where('county', '=', county)
    .where('id', '=', id)
    .execute()
}

/** The mapping that a person left for files with these headings. */
export async function savedMapping(
  tx: Tx,
  county: string,
  kind: ImportKind,
  headings: string,
): Promise<Mapping | undefined> {
  const row = await tx
    .selectFrom('import_mapping')
    .select('body')
    .where('county', '=', county)
    .where('kind', '=', kind)
    .where('headings', '=', headings)
    .executeTakeFirst()
  return row?.body as Mapping | undefined
}

export async function saveMapping(
  tx: Tx,
  county: string,
  saved: { readonly kind: ImportKind; readonly headings: string; readonly mapping: Mapping },
  made: { readonly by: string; readonly at: Date },
): Promise<void> {
  const values = { body: JSON.stringify(saved.mapping), mended_by: made.by, mended_at: made.at }
  await tx
    .insertInto('import_mapping')
    .values({ county, kind: saved.kind, headings: saved.headings, ...values })
    .onConflict((conflict) => conflict.columns(['county', 'kind', 'headings']).doUpdateSet(values))
    .execute()
}
