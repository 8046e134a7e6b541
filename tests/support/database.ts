import { createHash, randomBytes } from 'node:crypto'
import pg from 'pg'
import { afterAll, inject } from 'vitest'
import { JOB_KINDS } from '../../src/jobs/kinds.ts'
import { prepareDatabase } from '../../src/jobs/prepare-database.ts'
import { type OpenDatabase, openDatabase } from '../../src/store/database/database.ts'
import { type HeldServer, holdEmbeddedServer } from '../../src/store/database/embedded/hold.ts'
import { readMigrations } from '../../src/store/database/migrate.ts'

export type TestDatabase = { readonly url: string; readonly database: OpenDatabase }

/** Any number; it keeps two test files from making the template at once. */
const LOCK = 7_032_651_905
const DURABILITY = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'max_connections=300']

let held: Promise<HeldServer> | undefined

/**
 * A migrated database of this test file's own, dropped after it. Call it at the top of a test file or of a
 * describe: `const { database } = await testDatabase()`.
 */
export async function testDatabase(): Promise<TestDatabase> {
  const url = await emptyDatabase(await templateName())
  const database = openDatabase({ url, maxConnections: 10, onTrouble: () => {} })
  afterAll(() => database.close())
  return { url, database }
}

/** The address of a new database, a copy of `template` or empty; dropped after the file. */
export async function emptyDatabase(template?: string): Promise<string> {
  const name = `t_${Math.floor(Date.now() / 1000)}_${randomBytes(6).toString('hex')}`
  if (template) await ensureTemplate(template)
  await onServer(async (client) => {
    await client.query(`create database ${name} template ${template ?? 'template0'} strategy file_copy`)
  })
  afterAll(() =>
    onServer(async (client) => {
      await client.query(`drop database if exists ${name} with (force)`)
    }),
  )
  return serverUrl(name)
}

/** The address of a database on the server that the tests use. */
export async function serverUrl(name?: string): Promise<string> {
  const server = inject('testServer')
  if (server.kind === 'embedded') {
    held ??= holdEmbeddedServer({ dataFolder: server.dataFolder, settings: DURABILITY, lingerMs: 10_000 })
    return (await held).url(name ?? 'postgres')
  }
  const url = new URL(server.url)
  if (name) url.pathname = `/${name}`
  return url.href
}

export async function onServer<T>(work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: await serverUrl() })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

/** Named for what is in it: other migrations or kinds of job make another template. */
async function templateName(): Promise<string> {
  const all = [...(await readMigrations()).map(({ checksum }) => checksum), ...JOB_KINDS].join()
  return `asfound_template_${createHash('sha256').update(all).digest('hex').slice(0, 16)}`
}

const ensureTemplate = (template: string): Promise<void> =>
  onServer(async (client) => {
    await client.query('select pg_advisory_lock($1)', [LOCK])
    const { rowCount } = await client.query('select from pg_database where datname = $1', [template])
    if (rowCount) return
    const draft = `${template}_draft`
    await client.query(`drop database if exists ${draft} with (force)`)
    await client.query(`create database ${draft} template template0`)
    await prepareDatabase(await serverUrl(draft))
    await client.query(`alter database ${draft} rename to ${template}`)
    await sweep(client)
  })

/** What killed test runs left behind: databases older than an hour that nobody is connected to. */
async function sweep(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ name: string }>(
    `select datname name from pg_database d
     where datname ~ '^t_[0-9]+_[0-9a-f]+$' and split_part(datname, '_', 2)::bigint < extract(epoch from now()) - 3600
       and not exists (select from pg_stat_activity a where a.datname = d.datname)`,
  )
  for (const { name } of rows) await client.query(`drop database if exists ${name}`)
}
