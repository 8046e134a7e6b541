import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { findBinaries } from '../../src/store/database/embedded/binaries.ts'
import { ensureCluster } from '../../src/store/database/embedded/cluster.ts'
import { databaseUrl, openServerFolder, type ServerFolder } from '../../src/store/database/embedded/folder.ts'
import {
  type Postmaster,
  startPostmaster,
  stopPostmaster,
} from '../../src/store/database/embedded/postmaster.ts'
import { chooseRunAs, giveTo, type RunAs } from '../../src/store/database/embedded/run-as.ts'

/** A PostgreSQL server of the embedded binaries that nobody looks after: whoever started it ends it. */
export type Server = {
  readonly folder: ServerFolder
  readonly way: RunAs
  readonly url: (database: string) => string
  readonly pid: number
  readonly stop: () => Promise<void>
}

/** A server with an empty cluster, which lets standbys follow it. */
export async function startPrimary(): Promise<Server> {
  const { folder, way } = await newFolder()
  const binaries = await findBinaries()
  await ensureCluster(folder, binaries, way)
  return serverOf(folder, way, await startPostmaster(folder, binaries, way, []))
}

/**
 * A standby of `primary`, copied while that one works and following it from then on; every commit of the primary waits until
 * the standby has it on disk. Copied by `pg_backup_start` and file by file (PostgreSQL 18, 25.3.3), for the embedded
 * binaries bring no base-backup program.
 */
export async function startStandby(primary: Server): Promise<Server> {
  const { folder, way } = await newFolder(primary)
  const name = path.basename(path.dirname(folder.root)).toLowerCase().replaceAll('-', '_')
  await asked(primary, async (client) => {
    await client.query('select pg_create_physical_replication_slot($1, true)', [name])
    await client.query('select pg_backup_start($1, true)', [name])
    await cp(primary.folder.cluster, folder.cluster, {
      recursive: true,
      filter: (from) => {
        const at = path.relative(primary.folder.cluster, from)
        return !/^(postmaster\.(pid|opts)|pg_wal[/\\].+|pg_replslot[/\\].+|standby\.signal)$/.test(at)
      },
    }).catch((fault: NodeJS.ErrnoException) => {
      // A table's file that went while it was copied is made again from the log.
      if (fault.code !== 'ENOENT') throw fault
    })
    const { rows } = await client.query<{ labelfile: string }>('select labelfile from pg_backup_stop(false)')
    await writeFile(path.join(folder.cluster, 'backup_label'), rows[0]!.labelfile)
  })
  const from = new URL(primary.url('postgres'))
  const place = `host=${from.searchParams.get('host')} port=${from.searchParams.get('port')}`
  await writeFile(path.join(folder.cluster, 'standby.signal'), '')
  await writeFile(
    path.join(folder.cluster, 'postgresql.auto.conf'),
    `primary_conninfo = '${place} user=postgres password=${from.password} application_name=${name}'\nprimary_slot_name = '${name}'\n`,
  )
  await giveTo(way, folder.cluster)
  const standby = serverOf(folder, way, await startPostmaster(folder, await findBinaries(), way, []))
  await asked(primary, async (client) => {
    await client.query(`alter system set synchronous_standby_names = '${name}'`)
    await client.query('select pg_reload_conf()')
    for (let state = ''; state !== 'sync'; ) {
      const { rows } = await client.query<{ sync_state: string }>(
        'select sync_state from pg_stat_replication where application_name = $1',
        [name],
      )
      state = rows[0]?.sync_state ?? ''
    }
  })
  return standby
}

/** Makes a standby the primary. */
export const promote = (standby: Server): Promise<void> =>
  asked(standby, async (client) => void (await client.query('select pg_promote(true, 60)')))

async function asked(server: Server, work: (client: pg.Client) => Promise<void>): Promise<void> {
  const client = new pg.Client({ connectionString: server.url('postgres') })
  client.on('error', () => {})
  await client.connect()
  try {
    await work(client)
  } finally {
    await client.end().catch(() => {})
  }
}

async function newFolder(like?: Server): Promise<{ folder: ServerFolder; way: RunAs }> {
  const data = await mkdtemp(path.join(os.tmpdir(), 'asfound-standby-'))
  await mkdir(path.join(data, 'postgres'), { mode: 0o700 })
  if (like) await cp(like.folder.password, path.join(data, 'postgres/password'))
  const folder = openServerFolder(data)
  return { folder, way: await chooseRunAs((await findBinaries()).postgres, folder.root) }
}

const serverOf = (folder: ServerFolder, way: RunAs, postmaster: Postmaster): Server => ({
  folder,
  way,
  url: (database) => databaseUrl(folder, database),
  pid: postmaster.pid,
  stop: async () => {
    await stopPostmaster(postmaster)
    await rm(path.dirname(folder.root), { recursive: true, force: true })
  },
})
