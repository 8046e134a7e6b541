import { createHash } from 'node:crypto'
import pg from 'pg'
import { listOriginals } from '../files/list-originals.ts'
import { pendingJobs } from '../jobs/carry-over.ts'
import { lastEntries } from '../store/audit/read-entries.ts'
import { verifyAudit } from '../store/audit/verify-audit.ts'
import { outsideIfGone } from '../store/database/database-fault.ts'
import type { ArchiveWriter } from './archive-writer.ts'
import { BackupRefusal } from './backup-refusal.ts'
import { copyTable } from './copy-table.ts'
import { FORM, JOBS, MANIFEST, type Manifest, OPENING, type Opening } from './manifest.ts'
import { AS_TEXT, tablesIn, textColumns } from './tables.ts'

export type BackupSource = {
  readonly url: string
  readonly originals: string
  readonly program: string
  readonly clock: () => Date
}

/**
 * Writes everything into the archive: the tables as they stand at one moment, whatever is written to them meanwhile, then
 * the jobs still to be done, then the originals. An original lies in its folder before any row speaks of it and is never
 * changed, so that those listed after that moment hold all that the rows name. The audit is verified in the same moment,
 * and what is wrong with it goes into the file: it is told when it can still be looked into. Ends the archive.
 */
export async function writeBackup(source: BackupSource, archive: ArchiveWriter): Promise<Manifest> {
  const client = new pg.Client({ connectionString: source.url, application_name: 'asfound backup' })
  client.on('error', () => {})
  try {
    await client.connect()
    await client.query('begin isolation level repeatable read read only')
    await client.query(AS_TEXT)
    const first = await openingOf(client, source)
    await archive.add(OPENING, JSON.stringify(first, null, 2))
    const tables = await addTables(client, first, archive)
    const jobs = await pendingJobs(client)
    await archive.add(JOBS, jobs.map((job) => `${JSON.stringify(job)}\n`).join(''))
    const heads = await lastEntries(client)
    const { faults } = await verifyAudit(client)
    const named = await originalsNamed(client)
    await client.query('commit')
    const originals = await addOriginals(source.originals, named, archive)
    const manifest: Manifest = {
      tables,
      jobs: jobs.length,
      originals,
      heads: [...heads],
      broken: [...faults],
    }
    await archive.add(MANIFEST, JSON.stringify(manifest, null, 2))
    archive.stream.finalize()
    return manifest
  } catch (fault) {
    throw outsideIfGone(fault)
  } finally {
    await client.end().catch(() => {})
  }
}

async function openingOf(client: pg.Client, { program, clock }: BackupSource): Promise<Opening> {
  const { rows: there } = await client.query<{ there: boolean }>(
    `select to_regclass('migration') is not null as there`,
  )
  if (!there[0]?.there)
    throw new BackupRefusal('There is no database of this service here: nothing to back up.')
  const { rows: migrations } = await client.query<Opening['migrations'][number]>(
    'select number, name, checksum from migration order by number',
  )
  const { rows } = await client.query<{ server: string }>(
    `select current_setting('server_version') as server`,
  )
  return {
    form: FORM,
    program,
    server: rows[0]?.server ?? '',
    at: clock().toISOString(),
    migrations,
    tables: [...(await tablesIn(client))],
  }
}

async function addTables(
  client: pg.Client,
  { tables }: Opening,
  archive: ArchiveWriter,
): Promise<Manifest['tables']> {
  const collated = await textColumns(client)
  const proofs: Manifest['tables'] = {}
  for (const table of tables) {
    const parts = archive.inParts(`tables/${table.name}`)
    proofs[table.name] = await copyTable(client, table, collated, parts.take)
    await parts.end()
  }
  return proofs
}

/** The columns that name an original, by their name. */
export const NAMING_ORIGINALS = ['content_hash', 'shown_hash', 'small_hash', 'printed_hash']

export async function originalsNamed(client: pg.ClientBase): Promise<ReadonlySet<string>> {
  const { rows: columns } = await client.query<{ sql: string }>(
    `select format('select %I as hash from %I where %1$I is not null', column_name, table_name) as sql from information_schema.columns
     where table_schema = 'public' and column_name = any ($1)`,
    [NAMING_ORIGINALS],
  )
  if (columns.length === 0) return new Set()
  const { rows } = await client.query<{ hash: string }>(columns.map(({ sql }) => sql).join(' union '))
  return new Set(rows.map(({ hash }) => hash))
}

async function addOriginals(
  folder: string,
  named: ReadonlySet<string>,
  archive: ArchiveWriter,
): Promise<Manifest['originals']> {
  const seen: string[] = []
  const damaged: string[] = []
  let bytes = 0
  for await (const file of listOriginals(folder)) {
    const hash = await archive.addOriginal(file)
    if (hash !== file.hash) damaged.push(file.hash)
    seen.push(file.hash)
    bytes += file.bytes
  }
  const there = new Set(seen)
  return {
    count: seen.length,
    bytes,
    sha256: hashOfNames(seen),
    missing: [...named].filter((hash) => !there.has(hash)).sort(),
    damaged: damaged.sort(),
  }
}

export const hashOfNames = (names: readonly string[]): string =>
  createHash('sha256').update(names.toSorted().join('\n')).digest('hex')
