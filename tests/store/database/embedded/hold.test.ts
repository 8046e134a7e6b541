import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { cp, mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { afterAll, afterEach, expect, test } from 'vitest'
import { type HeldServer, holdEmbeddedServer } from '../../../../src/store/database/embedded/hold.ts'
import { isAlive } from '../../../../src/store/database/embedded/postmaster-file.ts'

const HOLDER = path.join(import.meta.dirname, '../../../support/hold-server.ts')
/** As hold-server.ts has it. */
const LINGER_MS = 300
const made: { folders: string[]; held: HeldServer[]; processes: ChildProcess[] } = {
  folders: [],
  held: [],
  processes: [],
}

afterEach(async () => {
  for (const held of made.held.splice(0)) held.release()
  for (const child of made.processes.splice(0)) child.kill('SIGKILL')
  for (const folder of made.folders.splice(0)) {
    await expect.poll(() => processIn(folder, 'cluster/postmaster.pid'), { timeout: 20_000 }).toBeUndefined()
    await rm(folder, { recursive: true })
  }
})

async function newFolder(under = ''): Promise<string> {
  const folder = path.join(await mkdtemp(path.join(os.tmpdir(), 'asfound-embedded-')), under)
  mkdirSync(folder, { recursive: true })
  made.folders.push(folder)
  return folder
}

/**
 * A folder whose server has run before and was stopped: a copy of one that is made once, because making a cluster takes
 * longer than what most of these tests do with it.
 */
async function usedFolder(under?: string): Promise<string> {
  const folder = await newFolder(under)
  mkdirSync(path.join(folder, 'postgres'), { mode: 0o700 })
  used ??= makeUsed()
  const from = await used
  for (const part of ['password', 'cluster'])
    await cp(path.join(from, 'postgres', part), path.join(folder, 'postgres', part), { recursive: true })
  return folder
}
let used: Promise<string> | undefined
afterAll(async () => {
  const folder = await used
  if (folder) await rm(folder, { recursive: true })
})

async function makeUsed(): Promise<string> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-embedded-'))
  const held = await holdEmbeddedServer({ dataFolder: folder, lingerMs: 0 })
  held.release()
  await stopped(folder)
  return folder
}

/** Server and supervisor are gone, and nothing writes to the folder any more. */
async function stopped(folder: string): Promise<void> {
  await expect.poll(() => postmasterOf(folder), { timeout: 20_000 }).toBeUndefined()
  await expect.poll(() => supervisorOf(folder), { timeout: 20_000 }).toBeUndefined()
}

async function hold(dataFolder: string): Promise<HeldServer> {
  const held = await holdEmbeddedServer({ dataFolder, lingerMs: LINGER_MS })
  made.held.push(held)
  return held
}

/** A service process of its own, to be killed; resolves with the address it was given. */
async function holdElsewhere(folder: string): Promise<{ child: ChildProcess; url: string }> {
  const child = spawn(process.execPath, [HOLDER, folder], { stdio: ['ignore', 'pipe', 'inherit'] })
  made.processes.push(child)
  const url = await new Promise<string>((resolve) => {
    child.stdout?.setEncoding('utf8').once('data', (text: string) => resolve(text.trim()))
  })
  return { child, url }
}

async function query<T extends object>(url: string, text: string): Promise<T | undefined> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query<T>(text)).rows[0]
  } finally {
    await client.end()
  }
}

/** The living process whose id is in a file of the folder. */
function processIn(folder: string, file: string): number | undefined {
  try {
    const pid = Number(readFileSync(path.join(folder, 'postgres', file), 'utf8').split('\n')[0])
    return pid > 0 && isAlive(pid) ? pid : undefined
  } catch {
    return undefined
  }
}

const postmasterOf = (folder: string) => processIn(folder, 'cluster/postmaster.pid')
const supervisorOf = (folder: string) => processIn(folder, 'supervisor.pid')
const write = (url: string) => query(url, 'create table kept as select 42 as a')
const read = async (url: string) => (await query<{ a: number }>(url, 'select a from kept'))?.a

function kill(pid: number | undefined): void {
  expect(pid).toBeDefined()
  process.kill(pid!, 'SIGKILL')
}

test('a new folder gets a server that writes through to the disk and sorts the same everywhere', async () => {
  const { url } = await hold(await newFolder())
  const settings = `select current_setting('fsync') as fsync, current_setting('server_version_num')::int >= 180000 as new,
    datlocprovider as provider, datlocale as locale from pg_database where datname = 'postgres'`
  expect(await query(url('postgres'), settings)).toEqual({
    fsync: 'on',
    new: true,
    provider: 'b',
    locale: 'C.UTF-8',
  })
})

test('processes that start at once on one empty folder share one server', async () => {
  const folder = await newFolder()
  const holders = await Promise.all([1, 2, 3, 4].map(() => holdElsewhere(folder)))
  const started = await Promise.all(
    holders.map(({ url }) => query(url, 'select pg_postmaster_start_time()::text as at')),
  )
  expect(new Set(started.map((row) => JSON.stringify(row))).size).toBe(1)
})

test('what was committed survives kill -9 of the service; the server then stops by itself', async () => {
  const folder = await usedFolder()
  const { child, url } = await holdElsewhere(folder)
  await write(url)
  child.kill('SIGKILL')
  await stopped(folder)
  expect(await read((await hold(folder)).url('postgres'))).toBe(42)
})

test('the server stays while one process of several is left', async () => {
  const folder = await usedFolder()
  const [first, second] = await Promise.all([holdElsewhere(folder), holdElsewhere(folder)])
  const before = postmasterOf(folder)
  first.child.kill('SIGKILL')
  await new Promise((resolve) => setTimeout(resolve, 3 * LINGER_MS))
  expect(postmasterOf(folder)).toBe(before)
  expect(await query(second.url, 'select 1 as one')).toEqual({ one: 1 })
})

test('a server orphaned by kill -9 of service and supervisor is found and taken over', async () => {
  const folder = await usedFolder()
  const { child, url } = await holdElsewhere(folder)
  await write(url)
  const orphan = postmasterOf(folder)
  kill(supervisorOf(folder))
  child.kill('SIGKILL')
  const held = await hold(folder)
  expect(postmasterOf(folder)).toBe(orphan)
  expect(await read(held.url('postgres'))).toBe(42)
})

test('a service whose supervisor is killed gets another, and its connections live on', async () => {
  const folder = await usedFolder()
  const held = await hold(folder)
  const client = new pg.Client({ connectionString: held.url('postgres') })
  await client.connect()
  const [before, supervisor] = [postmasterOf(folder), supervisorOf(folder)]
  kill(supervisor)
  await expect.poll(() => supervisorOf(folder), { timeout: 15_000 }).not.toBe(supervisor)
  await expect.poll(() => supervisorOf(folder), { timeout: 15_000 }).toBeDefined()
  expect((await client.query('select 1 as one')).rows).toEqual([{ one: 1 }])
  await client.end()
  expect(postmasterOf(folder)).toBe(before)
})

test('a killed server is started again, with everything that was committed', async () => {
  const folder = await usedFolder()
  const held = await hold(folder)
  await write(held.url('postgres'))
  const before = postmasterOf(folder)
  kill(before)
  await expect
    .poll(() => read(held.url('postgres')).catch(() => undefined), { timeout: 25_000, interval: 200 })
    .toBe(42)
  expect(postmasterOf(folder)).not.toBe(before)
})

test('a postmaster.pid that names somebody else’s process does not keep the server from starting', async () => {
  const folder = await usedFolder()
  const { child, url } = await holdElsewhere(folder)
  await write(url)
  const file = path.join(folder, 'postgres/cluster/postmaster.pid')
  const left = readFileSync(file, 'utf8').split('\n')
  child.kill('SIGKILL')
  await expect.poll(() => supervisorOf(folder), { timeout: 15_000 }).toBeUndefined()
  writeFileSync(file, [process.pid, ...left.slice(1)].join('\n'))
  expect(await read((await hold(folder)).url('postgres'))).toBe(42)
})

test('a cluster that was half made when the machine stopped is made again', async () => {
  const folder = await newFolder()
  mkdirSync(path.join(folder, 'postgres/cluster.draft/base'), { recursive: true })
  writeFileSync(path.join(folder, 'postgres/cluster.draft/PG_VERSION'), '18\n')
  const { url } = await hold(folder)
  expect(await query(url('postgres'), 'select 1 as one')).toEqual({ one: 1 })
  expect(existsSync(path.join(folder, 'postgres/cluster.draft'))).toBe(false)
})

test('a folder too deep for a socket is served on the loopback address, by password only', async () => {
  const folder = await usedFolder(path.join('a'.repeat(60), 'b'.repeat(60)))
  const url = new URL((await hold(folder)).url('postgres'))
  expect(url.hostname).toBe('127.0.0.1')
  expect(await query(url.href, 'select 1 as one')).toEqual({ one: 1 })
  url.password = 'guess'
  await expect(query(url.href, 'select 1')).rejects.toThrow(/password authentication failed/)
})
