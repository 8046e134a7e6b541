import { closeSync, existsSync, openSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { chmod, chown, mkdir, readFile } from 'node:fs/promises'
import net from 'node:net'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'
import { OutsideFailure } from '../../../base/outside-failure.ts'
import type { Binaries } from './binaries.ts'
import { databaseUrl, type ServerAddress, type ServerFolder } from './folder.ts'
import { disownPostmasterFile, isAlive, runningPostmaster } from './postmaster-file.ts'
import { type RunAs, spawnAs } from './run-as.ts'

/** A running server, started here or taken over from a supervisor that was killed. */
export type Postmaster = { readonly pid: number; readonly ended: Promise<void> }

/** Where a socket may live: the kernel keeps the path in 108 bytes with its closing zero. */
const MAX_SOCKET_PATH = 107
const SOCKET_PORT = 5432

/** Starts the server, or takes over the one that runs, and waits until it answers. `settings` are PostgreSQL's, as `name=value`. */
export async function startPostmaster(
  folder: ServerFolder,
  binaries: Binaries,
  way: RunAs,
  settings: readonly string[],
): Promise<Postmaster> {
  const orphan = runningPostmaster(folder)
  if (orphan !== undefined) {
    if (existsSync(folder.address) && (await answers(folder, () => isAlive(orphan), 10_000)))
      return takeOver(orphan)
    await stopPostmaster({ pid: orphan, ended: untilGone(orphan) })
  }
  for (let attempt = 1; ; attempt++) {
    disownPostmasterFile(folder)
    const postmaster = await spawnPostmaster(folder, binaries, way, settings)
    let running = true
    void postmaster.ended.then(() => {
      running = false
    })
    if (await answers(folder, () => running, 60_000)) return postmaster
    await stopPostmaster(postmaster)
    // Backends of a killed postmaster need a moment to notice; until then PostgreSQL keeps a second one out.
    if (attempt === 20) throw new OutsideFailure(`PostgreSQL does not start: ${await lastWords(folder)}`)
    await wait(250)
  }
}

/** Rolls back what is open, writes everything down and ends; harder after 30 s, hardest after 40 s. */
export async function stopPostmaster({ pid, ended }: Postmaster): Promise<void> {
  for (const [signal, patience] of [
    ['SIGINT', 30_000],
    ['SIGQUIT', 10_000],
    ['SIGKILL', 5_000],
  ] as const) {
    try {
      process.kill(pid, signal)
    } catch {
      return
    }
    const over = await Promise.race([ended.then(() => true), wait(patience, false, { ref: false })])
    if (over) return
  }
}

async function spawnPostmaster(
  folder: ServerFolder,
  binaries: Binaries,
  way: RunAs,
  settings: readonly string[],
): Promise<Postmaster> {
  await mkdir(folder.run, { recursive: true, mode: 0o700 })
  await chmod(folder.run, 0o700)
  if (process.getuid?.() === 0) await chown(folder.run, way.owner.uid, way.owner.gid)
  const address = await chooseAddress(folder)
  const places = address.host.startsWith('/')
    ? ['-k', address.host, '-c', 'listen_addresses=']
    : ['-k', '', '-c', `listen_addresses=${address.host}`]
  const chosen = settings.flatMap((setting) => ['-c', setting])
  const args = ['-D', folder.cluster, '-p', String(address.port), ...places, ...chosen]
  const log = openLog(folder)
  const child = spawnAs(way, binaries.postgres, args, { stdio: ['ignore', log, log], cwd: folder.root })
  closeSync(log)
  const ended = new Promise<void>((resolve) => {
    child.once('exit', () => resolve())
    child.once('error', () => resolve())
  })
  rmSync(folder.address, { force: true })
  writeFileSync(`${folder.address}.draft`, JSON.stringify(address), { mode: 0o600 })
  renameSync(`${folder.address}.draft`, folder.address)
  return { pid: child.pid ?? 0, ended }
}

async function chooseAddress(folder: ServerFolder): Promise<ServerAddress> {
  const socket = path.join(folder.run, `.s.PGSQL.${SOCKET_PORT}`)
  const fits = Buffer.byteLength(socket) < MAX_SOCKET_PATH && process.platform !== 'win32'
  return fits ? { host: folder.run, port: SOCKET_PORT } : { host: '127.0.0.1', port: await freePort() }
}

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = net.createServer().once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as net.AddressInfo
      server.close(() => resolve(port))
    })
  })

async function answers(folder: ServerFolder, stillRuns: () => boolean, patience: number): Promise<boolean> {
  const end = Date.now() + patience
  while (Date.now() < end && stillRuns()) {
    const client = new pg.Client({
      connectionString: databaseUrl(folder, 'postgres'),
      connectionTimeoutMillis: 2_000,
    })
    client.on('error', () => {})
    try {
      await client.connect()
      await client.query('select 1')
      return true
    } catch {
      await wait(20)
    } finally {
      await client.end().catch(() => {})
    }
  }
  return false
}

const takeOver = (pid: number): Postmaster => ({ pid, ended: untilGone(pid) })

async function untilGone(pid: number): Promise<void> {
  while (isAlive(pid)) await wait(200, undefined, { ref: false })
}

function openLog(folder: ServerFolder): number {
  if (existsSync(folder.log) && statSync(folder.log).size > 10_000_000)
    renameSync(folder.log, `${folder.log}.old`)
  return openSync(folder.log, 'a', 0o600)
}

const lastWords = async (folder: ServerFolder): Promise<string> =>
  (await readFile(folder.log, 'utf8')).trim().split('\n').slice(-4).join(' | ')
