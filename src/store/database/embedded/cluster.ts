import { once } from 'node:events'
import { existsSync } from 'node:fs'
import { chown, open, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { OutsideFailure } from '../../../base/outside-failure.ts'
import type { Binaries } from './binaries.ts'
import type { ServerFolder } from './folder.ts'
import { type RunAs, spawnAs } from './run-as.ts'

/**
 * PostgreSQL's data directory, made when there is none. It is made beside its place and moved there when
 * whole: a machine that stops half-way leaves a draft, never half a cluster. Call it holding the folder's lock.
 */
export async function ensureCluster(folder: ServerFolder, binaries: Binaries, way: RunAs): Promise<void> {
  if (existsSync(path.join(folder.cluster, 'PG_VERSION'))) return
  for (const entry of await readdir(folder.root)) {
    if (entry.startsWith('cluster.draft')) await rm(path.join(folder.root, entry), { recursive: true })
  }
  const draft = path.join(folder.root, 'cluster.draft')
  const passwordFile = path.join(folder.root, 'password.draft')
  await writeFile(passwordFile, await readFile(folder.password), { mode: 0o600 })
  if (process.getuid?.() === 0) await chown(passwordFile, way.owner.uid, way.owner.gid)
  try {
    await initdb(binaries.initdb, way, draft, passwordFile)
  } finally {
    await rm(passwordFile)
  }
  await rename(draft, folder.cluster)
  await syncFolder(folder.root)
}

/** Builtin C.UTF-8 sorts by code point everywhere alike and needs no locale of the machine, which a bare one lacks. */
const INITDB = [
  '--username=postgres',
  '--auth=scram-sha-256',
  '--encoding=UTF8',
  '--locale-provider=builtin',
  '--builtin-locale=C.UTF-8',
  '--locale=C',
  '--no-instructions',
]

async function initdb(program: string, way: RunAs, target: string, passwordFile: string): Promise<void> {
  const args = [...INITDB, `--pgdata=${target}`, `--pwfile=${passwordFile}`]
  const child = spawnAs(way, program, args, {
    stdio: ['ignore', 'ignore', 'pipe'],
    cwd: path.dirname(target),
  })
  let says = ''
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    says += text
  })
  const [code] = (await once(child, 'close')) as [number | null]
  if (code !== 0) throw new OutsideFailure(`initdb failed (${code}): ${says.trim()}`)
}

async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return
  const handle = await open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}
