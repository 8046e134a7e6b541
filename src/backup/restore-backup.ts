import { text } from 'node:stream/consumers'
import { isDeepStrictEqual } from 'node:util'
import pg from 'pg'
import type { z } from 'zod'
import { OutsideFailure } from '../base/outside-failure.ts'
import { type Originals, openOriginals } from '../files/originals.ts'
import { type PendingJob, pendingJob, putJobsBack } from '../jobs/carry-over.ts'
import { prepareDatabase } from '../jobs/prepare-database.ts'
import { outsideIfGone } from '../store/database/database-fault.ts'
import { MigrationRefusal } from '../store/database/migrate.ts'
import { type ArchiveEntry, readArchive } from './archive-reader.ts'
import { BackupRefusal } from './backup-refusal.ts'
import { fillTables } from './fill-tables.ts'
import { JOBS, MANIFEST, type Manifest, manifest, OPENING, type Opening, opening } from './manifest.ts'
import { prepareTarget, refuseUnlessEmpty } from './prepare-target.ts'
import { proveTables } from './prove-tables.ts'
import { AS_TEXT } from './tables.ts'
import { hashOfNames } from './write-backup.ts'

export type RestoreTarget = {
  readonly url: string
  readonly originals: string
  /** Takes a backup whose audit did not hold when it was made, and marks the database for good. */
  readonly asBroken?: boolean
}
export type Restored = {
  readonly opening: Opening
  readonly manifest: Manifest
  /** What was wrong with the audit already. */
  readonly broken: readonly string[]
}

/**
 * Puts a backup into an empty database and a folder of originals, and proves it: every table read back must have the
 * rows and the hash that the backup says, the audit must hold, and its chains must end where they ended. All of the
 * database or nothing; originals that lie there already do no harm. Then the newer migrations, where there are some.
 *
 * Throws BackupRefusal with what is wrong, OutsideFailure when the database is gone.
 */
export async function restoreBackup(file: string, target: RestoreTarget): Promise<Restored> {
  const client = new pg.Client({ connectionString: target.url, application_name: 'asfound restore' })
  client.on('error', () => {})
  try {
    await client.connect()
    await refuseUnlessEmpty(client)
    const restored = await takeAll(file, target, client)
    await prepareDatabase(target.url)
    await markBroken(client, restored.broken)
    return restored
  } catch (fault) {
    throw inWords(file, outsideIfGone(fault))
  } finally {
    await client.end().catch(() => {})
  }
}

/** Bytes that are others than they were come out as anything: a bad number, text that is no JSON, a row that does not fit. */
function inWords(file: string, fault: unknown): unknown {
  const told =
    fault instanceof BackupRefusal || fault instanceof OutsideFailure || fault instanceof MigrationRefusal
  return told
    ? fault
    : new BackupRefusal(`${file} is damaged, and nothing of it was restored: ${(fault as Error).message}`, {
        cause: fault,
      })
}

async function markBroken(client: pg.Client, broken: readonly string[]): Promise<void> {
  for (const says of broken) await client.query('insert into audit_break (says) values ($1)', [says])
}

async function takeAll(file: string, target: RestoreTarget, client: pg.Client): Promise<Restored> {
  const entries = readArchive(file)
  const first = await readOpening(entries, file)
  await prepareTarget(target.url, first)
  await client.query('begin')
  await client.query(AS_TEXT)
  await switchTriggers(client, 'disable')
  const tables = fillTables(client, first)
  const originals = keepOriginals(await openOriginals(target.originals))
  let jobs: readonly PendingJob[] = []
  let told: Manifest | undefined
  for await (const { name, stream } of entries) {
    const [, table] = /^tables\/([a-z_][a-z0-9_]*)\/\d+$/.exec(name) ?? []
    const [, hash] = /^originals\/([0-9a-f]{64})$/.exec(name) ?? []
    if (table) await tables.take(table, stream)
    else if (hash) await originals.take(hash, stream)
    else if (name === JOBS) jobs = await readJobs(stream)
    else if (name === MANIFEST) told = parsed(manifest, await text(stream), file)
    else throw new BackupRefusal(`${file} holds what no backup does: ${name}`)
  }
  if (told === undefined) throw new BackupRefusal(`${file} was cut short: its last entry is not there.`)
  compare(told, { tables: await tables.end(), jobs: jobs.length, ...originals.end() })
  await putJobsBack(target.url, client, jobs)
  await switchTriggers(client, 'enable')
  const broken = await proveTables(client, first, told, target.asBroken === true)
  await client.query('commit')
  return { opening: first, manifest: told, broken }
}

async function readOpening(entries: AsyncGenerator<ArchiveEntry>, file: string): Promise<Opening> {
  const { value } = await entries.next()
  if (value?.name === OPENING) return parsed(opening, await text(value.stream), file)
  throw new BackupRefusal(`${file} is no backup of this service.`)
}

/** The owner's own triggers; what refers to what is checked all the same. */
async function switchTriggers(client: pg.Client, how: 'enable' | 'disable'): Promise<void> {
  const { rows } = await client.query<{ sql: string }>(
    `select format('alter table %s ${how} trigger user', oid::regclass) as sql from pg_class
     where relnamespace = 'public'::regnamespace and relkind = 'r'`,
  )
  for (const { sql } of rows) await client.query(sql)
}

function keepOriginals(files: Originals) {
  const seen: string[] = []
  const damaged: string[] = []
  let bytes = 0
  return {
    take: async (hash: string, stream: ArchiveEntry['stream']) => {
      seen.push(hash)
      try {
        const kept = await files.keep(stream, (it) => {
          bytes += it.bytes
          if (it.hash !== hash) throw new BackupRefusal('other bytes than its name says')
        })
        return kept
      } catch (fault) {
        if (!(fault instanceof BackupRefusal)) throw fault
        damaged.push(hash)
      }
    },
    end: () => ({ count: seen.length, bytes, sha256: hashOfNames(seen), damaged: damaged.sort() }),
  }
}

const readJobs = async (stream: ArchiveEntry['stream']): Promise<readonly PendingJob[]> =>
  (await text(stream))
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => pendingJob.parse(JSON.parse(line)))

type Taken = Pick<Manifest, 'tables' | 'jobs'> & Omit<Manifest['originals'], 'missing'>

/** What came against what was to come. */
function compare(told: Manifest, { tables, jobs, count, bytes, sha256, damaged }: Taken): void {
  const wrong = Object.entries(told.tables).filter(([name, proof]) => !isDeepStrictEqual(proof, tables[name]))
  if (wrong.length > 0 || jobs !== told.jobs)
    throw new BackupRefusal(`The backup is damaged: ${wrong.map(([name]) => name).join(', ') || 'jobs'}`)
  const { missing: _, ...originals } = told.originals
  if (!isDeepStrictEqual(originals, { count, bytes, sha256, damaged }))
    throw new BackupRefusal(
      `The backup is damaged in its originals: ${damaged.join(', ') || 'some are not there'}`,
    )
}

function parsed<S extends z.ZodType>(schema: S, json: string, file: string): z.output<S> {
  try {
    const read = schema.safeParse(JSON.parse(json))
    if (read.success) return read.data
  } catch {
    // Told below.
  }
  throw new BackupRefusal(`${file} is no backup that this version reads.`)
}
