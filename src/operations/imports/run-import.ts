import type { Readable } from 'node:stream'
import { invariant, unreachable } from '../../base/invariant.ts'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { readAhead } from '../../base/read-ahead.ts'
import { breathing } from '../../jobs/breathe.ts'
import type { JobRun } from '../../jobs/queue.ts'
import { type County, countyById } from '../../store/counties.ts'
import { asService, type Service } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { keepRejections, type Rejection } from '../../store/import-rejections.ts'
import { changeImport, type Import, type ImportCounts, importById, lockImport } from '../../store/imports.ts'
import { gatherParcels } from '../../store/reruns.ts'
import type { OperationContext } from '../context.ts'
import { closeImport } from './close-import.ts'
import { landFindings } from './land-findings.ts'
import { landParcels } from './land-parcels.ts'
import { landPermits } from './land-permits.ts'
import { type Landed, rejected } from './landed.ts'
import type { Landing } from './landing.ts'
import { csvRows, ndjsonRows, type Row } from './read-rows.ts'
import { type RowEntry, rowReader } from './row-entry.ts'

/** As many rows, or as much text of them, as land in one transaction. */
const AT_ONCE = 250
const CHARACTERS_AT_ONCE = 1_000_000

type Counted = ImportCounts & { readonly state: Import['state'] }
type Running = {
  readonly context: OperationContext
  readonly service: Service
  readonly county: County
  readonly it: Import
  readonly run: JobRun<'run-import'>
}

/**
 * Works an import off. Each batch lands in one transaction together with how far the file is read, so that after a kill
 * it goes on with the first row that did not land, and none lands twice. A trial lands everything in one transaction
 * and undoes it: what it reports is what the database itself said.
 */
export async function runImport(context: OperationContext, run: JobRun<'run-import'>): Promise<Counted> {
  const service = asService(run.actor)
  const { county: id } = run.actor
  const [county, it] = await transact(context.database, service, async (tx) => [
    await countyById(tx, id),
    await importById(tx, id, run.data.import),
  ])
  invariant(county && it, `an import of ${id} that is not there`)
  const running: Running = { context, service, county, it, run }
  try {
    if (it.state === 'trying') return await tryRun(running)
    if (it.state === 'running') return await fullRun(running)
    return it
  } catch (fault) {
    if (fault instanceof TakenOver)
      return (await transact(context.database, service, (tx) => importById(tx, id, it.id))) ?? it
    if (fault instanceof OutsideFailure || run.signal.aborted) throw fault
    const reason = fault instanceof Error ? fault.message.slice(0, 500) : 'it stopped'
    await transact(context.database, service, (tx) =>
      changeImport(tx, id, it.id, { state: 'failed', reason }),
    )
    throw fault
  }
}

async function fullRun({ context, service, county, it, run }: Running): Promise<Counted> {
  let counts = countsOf(it)
  const read = rowReader(it.kind, it.head, it.mapping)
  // The next rows are read while the database lands these.
  for await (const batch of readAhead(batches(await rowsOf(context, it), it.readToLine, read))) {
    run.signal.throwIfAborted()
    counts = await transact(context.database.bulk, service, async (tx) => {
      const now = await lockImport(tx, county.id, it.id)
      // Somebody else runs the same import (a job is done at least once) and was quicker: theirs to go on with.
      if (now?.state !== 'running' || now.readToLine !== counts.readToLine) throw new TakenOver()
      const landed = await land({ context, service, county, it, run }, tx, batch)
      const next = counted(counts, batch, landed)
      await keepRejections(tx, county.id, it.id, rejectionsOf(batch, landed))
      const touched = landed.flatMap((row) => ('parcel' in row && row.parcel !== null ? [row.parcel] : []))
      if (it.rerun !== null) await gatherParcels(tx, county.id, it.rerun, [...new Set(touched)])
      await changeImport(tx, county.id, it.id, next)
      return next
    })
    await run.report({ done: counts.rowsRead, total: null, says: told(counts) })
  }
  await closeImport(context, service, it)
  return { ...counts, state: 'done' }
}

/** The rows that were read have landed already, by another hand. */
class TakenOver extends Error {}

/** Carries what a trial came to out of the transaction that it undoes. */
class Undone extends Error {
  readonly counts: ImportCounts

  constructor(counts: ImportCounts) {
    super('a trial is undone')
    this.counts = counts
  }
}

async function tryRun(running: Running): Promise<Counted> {
  const { context, service, county, it, run } = running
  const read = rowReader(it.kind, it.head, it.mapping)
  const trial = transact(context.database.bulk, service, async (tx) => {
    let counts = NOTHING
    for await (const batch of readAhead(batches(await rowsOf(context, it), 0, read))) {
      run.signal.throwIfAborted()
      const landed = await land(running, tx, batch)
      counts = counted(counts, batch, landed)
      // On a connection of its own: what is wrong is kept, what landed is not.
      await transact(context.database, service, (own) =>
        keepRejections(own, county.id, it.id, rejectionsOf(batch, landed)),
      )
      await run.report({ done: counts.rowsRead, total: null, says: told(counts) })
    }
    throw new Undone(counts)
  })
  const counts = await trial.catch((fault: unknown) => {
    if (fault instanceof Undone) return fault.counts
    throw fault
  })
  await transact(context.database, service, (tx) =>
    changeImport(tx, county.id, it.id, { ...counts, state: 'tried', readToLine: 0 }),
  )
  return { ...counts, state: 'tried' }
}

async function land(
  { context, county, it }: Running,
  tx: Tx,
  { rows: all, entries }: Batch,
): Promise<readonly Landed[]> {
  const at = context.clock()
  const landing: Landing = {
    tx,
    county: county.id,
    format: county.parcelFormat,
    importId: it.id,
    by: it.madeBy,
    at,
    newId: context.newId,
  }
  const broken = all.flatMap(({ line, broken: wants }) =>
    wants === undefined ? [] : [rejected(line, { column: null, had: null, wants })],
  )
  return [...broken, ...(await landKind(it.kind, landing, entries))]
}

function landKind(
  kind: Import['kind'],
  landing: Landing,
  rows: readonly RowEntry[],
): Promise<readonly Landed[]> {
  switch (kind) {
    case 'permits':
      return landPermits(landing, rows)
    case 'parcels':
      return landParcels(landing, rows)
    case 'findings':
      return landFindings(landing, rows)
    default:
      return unreachable(kind, 'kind of import')
  }
}

async function rowsOf(
  context: OperationContext,
  { format, contentHash, head }: Import,
): Promise<AsyncGenerator<Row>> {
  const bytes: Readable | undefined = await context.files.read(contentHash)
  if (!bytes) throw new OutsideFailure('The uploaded file is missing from storage')
  return format === 'csv' ? csvRows(bytes, head) : ndjsonRows(bytes, head)
}

/** Rows as they stand in the file, and those that could be read as the entries they make. */
type Batch = { readonly rows: readonly Row[]; readonly entries: readonly RowEntry[] }

async function* batches(
  rows: AsyncIterable<Row>,
  after: number,
  read: (row: Row) => RowEntry,
): AsyncGenerator<Batch> {
  const breathe = breathing()
  let batch: Row[] = []
  let entries: RowEntry[] = []
  let characters = 0
  for await (const row of rows) {
    await breathe()
    if (row.line <= after) continue
    batch.push(row)
    if (row.broken === undefined) entries.push(read(row))
    characters += row.cells.reduce((sum, cell) => sum + cell.length, 0)
    if (batch.length < AT_ONCE && characters < CHARACTERS_AT_ONCE) continue
    yield { rows: batch, entries }
    batch = []
    entries = []
    characters = 0
  }
  if (batch.length > 0) yield { rows: batch, entries }
}

const NOTHING: ImportCounts = { rowsRead: 0, readToLine: 0, added: 0, changed: 0, unchanged: 0, rejected: 0 }
const countsOf = ({
  rowsRead,
  readToLine,
  added,
  changed,
  unchanged,
  rejected: refused,
}: Import): ImportCounts => ({
  rowsRead,
  readToLine,
  added,
  changed,
  unchanged,
  rejected: refused,
})

function counted(before: ImportCounts, { rows }: Batch, landed: readonly Landed[]): ImportCounts {
  const of = (became: Landed['became']) => landed.filter((row) => row.became === became).length
  return {
    rowsRead: before.rowsRead + rows.length,
    readToLine: rows.reduce((last, { line }) => Math.max(last, line), before.readToLine),
    added: before.added + of('added'),
    changed: before.changed + of('changed'),
    unchanged: before.unchanged + of('unchanged'),
    rejected: before.rejected + of('rejected'),
  }
}

function rejectionsOf({ rows }: Batch, landed: readonly Landed[]): readonly Rejection[] {
  const cells = new Map(rows.map((row) => [row.line, row.cells]))
  return landed.flatMap((row) =>
    row.became === 'rejected'
      ? [{ line: row.line, cells: cells.get(row.line) ?? [], faults: row.faults }]
      : [],
  )
}

const told = ({ added, changed, unchanged, rejected: refused }: ImportCounts): string =>
  `${added} added, ${changed} changed, ${unchanged} unchanged, ${refused} rejected`
