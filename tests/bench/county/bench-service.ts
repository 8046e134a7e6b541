import { randomBytes } from 'node:crypto'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { uuidv7 } from 'uuidv7'
import { must } from '../../../src/base/result.ts'
import { openOriginals } from '../../../src/files/originals.ts'
import { loadRuleBook } from '../../../src/files/rule-packs.ts'
import { prepareDatabase } from '../../../src/jobs/prepare-database.ts'
import type { JobQueue } from '../../../src/jobs/queue.ts'
import type { OperationContext } from '../../../src/operations/context.ts'
import { openDatabase } from '../../../src/store/database/database.ts'
import { holdEmbeddedServer } from '../../../src/store/database/embedded/hold.ts'
import { enrolPeople, type People } from '../../support/people.ts'

export type BenchService = {
  readonly url: string
  readonly dataFolder: string
  readonly context: OperationContext
  readonly people: People
  /** As the owner of the tables, on a connection of its own. */
  readonly owner: pg.Client
  readonly close: () => Promise<void>
}

const nothing: JobQueue = { enqueue: async () => uuidv7(), check: async () => {} }

/**
 * A prepared database of the bench's own, with the durability that the service has: on `BENCH_DATABASE_URL` (a server on
 * which databases may be made), else on an embedded server in a folder that goes away again.
 */
export async function benchService(): Promise<BenchService> {
  const dataFolder = await mkdtemp(path.join(os.tmpdir(), 'asfound-bench-'))
  // As the server's superuser: the role that the service comes in as may make no databases.
  const held = process.env.BENCH_DATABASE_URL ? undefined : await holdEmbeddedServer({ dataFolder })
  const server = { url: held?.url('postgres') ?? process.env.BENCH_DATABASE_URL! }
  const name = `bench_${randomBytes(6).toString('hex')}`
  const admin = new pg.Client({ connectionString: server.url })
  await admin.connect()
  await admin.query(`create database ${name} template template0`)
  const address = new URL(server.url)
  address.pathname = `/${name}`
  const url = address.href
  await prepareDatabase(url)
  const database = openDatabase({ url, maxConnections: 10, onTrouble: () => {} })
  const owner = new pg.Client({ connectionString: url })
  await owner.connect()
  const people = await enrolPeople(database)
  const context: OperationContext = {
    database,
    clock: () => new Date(),
    newId: uuidv7,
    files: await openOriginals(path.join(dataFolder, 'originals')),
    jobs: nothing,
    // Nothing here is printed or sealed.
    letters: undefined as never,
    book: must(await loadRuleBook()),
  }
  const close = async () => {
    await owner.end()
    await database.close()
    await admin.query(`drop database ${name} with (force)`)
    await admin.end()
    held?.release()
    await rm(dataFolder, { recursive: true, force: true, maxRetries: 20, retryDelay: 250 })
  }
  return { url, dataFolder, context, people, owner, close }
}
