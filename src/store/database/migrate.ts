import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import pg from 'pg'
import { outsideIfGone } from './database-fault.ts'

export type Migration = {
  readonly number: number
  readonly name: string
  readonly sql: string
  readonly checksum: string
}

/** The database and the migrations of this version do not belong together; nothing was changed. */
export class MigrationRefusal extends Error {
  override readonly name = 'MigrationRefusal'
}

export const MIGRATIONS_FOLDER = fileURLToPath(new URL('../../../migrations', import.meta.url))
const FILE_NAME = /^(\d{4})-[a-z0-9-]+\.sql$/
/** Any number, as long as every version of this program takes the same. */
const LOCK = 7_032_651_904
const MINIMUM_SERVER = 170_000

/** Throws MigrationRefusal when a file name is not `0001-what-it-does.sql`, or a number is missing or taken twice. */
export async function readMigrations(folder: string = MIGRATIONS_FOLDER): Promise<readonly Migration[]> {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.sql')).sort()
  return Promise.all(
    names.map(async (name, index) => {
      const number = Number(FILE_NAME.exec(name)?.[1])
      if (number !== index + 1) {
        throw new MigrationRefusal(`${name}: expected ${String(index + 1).padStart(4, '0')}-what-it-does.sql`)
      }
      const text = (await readFile(`${folder}/${name}`, 'utf8')).replaceAll('\r\n', '\n')
      return { number, name, sql: text, checksum: createHash('sha256').update(text).digest('hex') }
    }),
  )
}

/**
 * Brings the database up to `migrations`, each in a transaction of its own, and returns the names of those it
 * ran. Forward only. Any number of processes may call it at once: one works, the others wait and find it done.
 *
 * Throws MigrationRefusal, having changed nothing, when the database is newer than `migrations`, when a
 * migration that already ran has been edited since, or when the server is older than PostgreSQL 17;
 * OutsideFailure when the database is gone. A migration that fails leaves those before it.
 */
export async function migrate(url: string, migrations: readonly Migration[]): Promise<readonly string[]> {
  const client = new pg.Client({ connectionString: url, application_name: 'asfound migrate' })
  client.on('error', () => {})
  try {
    await client.connect()
    await requireServer(client)
    await client.query('select pg_advisory_lock($1)', [LOCK])
    await client.query(`create table if not exists migration (
      number integer primary key, name text not null, checksum text not null,
      ran_at timestamptz not null default now())`)
    const waiting = await findWaiting(client, migrations)
    for (const migration of waiting) await run(client, migration)
    return waiting.map(({ name }) => name)
  } catch (fault) {
    throw outsideIfGone(fault)
  } finally {
    await client.end().catch(() => {})
  }
}

async function requireServer(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ number: string; name: string }>(
    `select current_setting('server_version_num') number, current_setting('server_version') name`,
  )
  const [{ number = '0', name = '' } = {}] = rows
  if (Number(number) < MINIMUM_SERVER) {
    throw new MigrationRefusal(`The database is PostgreSQL ${name}; 17 or newer is needed.`)
  }
}

async function findWaiting(
  client: pg.Client,
  migrations: readonly Migration[],
): Promise<readonly Migration[]> {
  const { rows: ran } = await client.query<{ number: number; name: string; checksum: string }>(
    'select number, name, checksum from migration order by number',
  )
  const newest = ran.at(-1)
  if (newest && newest.number > migrations.length) {
    throw new MigrationRefusal(
      `The database is newer than this version: it has migration ${newest.name}, and this version ends with ` +
        `${migrations.at(-1)?.name ?? 'none'}. Start the newer version.`,
    )
  }
  for (const { number, name, checksum } of ran) {
    if (migrations[number - 1]?.checksum === checksum) continue
    throw new MigrationRefusal(
      `Migration ${name} has changed since it ran on this database (now ${migrations[number - 1]?.name}). ` +
        'Never edit a migration that has run: restore its text and write a new one.',
    )
  }
  return migrations.slice(newest?.number ?? 0)
}

async function run(client: pg.Client, { number, name, sql, checksum }: Migration): Promise<void> {
  await client.query('begin')
  try {
    await client.query(sql)
    await client.query('insert into migration (number, name, checksum) values ($1, $2, $3)', [
      number,
      name,
      checksum,
    ])
    await client.query('commit')
  } catch (fault) {
    await client.query('rollback').catch(() => {})
    throw outsideIfGone(new Error(`Migration ${name} failed: ${(fault as Error).message}`, { cause: fault }))
  }
}
