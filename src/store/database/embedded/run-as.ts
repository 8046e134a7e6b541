import { execFile, type SpawnOptions, spawn } from 'node:child_process'
import { chown, lchown, readdir, readFile, stat } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import { OutsideFailure } from '../../../base/outside-failure.ts'

const run = promisify(execFile)

type Owner = { readonly uid: number; readonly gid: number }

/** A way to run PostgreSQL's programs, which refuse to run as root and want a named user. */
export type RunAs = {
  readonly says: string
  /** Who owns the cluster's files, as seen from outside. */
  readonly owner: Owner
  readonly prefix: readonly string[]
  readonly options: SpawnOptions
}

/**
 * The first way that can run `program` and write in `folder`:
 *
 * - an ordinary user: as that user;
 * - root: as an unprivileged user of this machine (the cleanest); else, where that user may not pass through
 *   a parent folder such as /root, in a user namespace of its own; else, where containers forbid namespaces,
 *   as the unprivileged user with the single capability to pass through.
 */
export async function chooseRunAs(program: string, folder: string): Promise<RunAs> {
  const faults: string[] = []
  for (const way of await waysToRun()) {
    if (process.getuid?.() === 0) await chown(folder, way.owner.uid, way.owner.gid)
    const fault = await probe(way, program, folder)
    if (fault === undefined) return way
    faults.push(`${way.says}: ${fault}`)
  }
  throw new OutsideFailure(
    `The embedded PostgreSQL cannot run here with its data in ${folder}. Tried: ${faults.join('; ')}. ` +
      'Move the project and the data folder (ASFOUND_DATA) out of a private home such as /root, start the ' +
      'service as an ordinary user, or set DATABASE_URL to a PostgreSQL of your own.',
  )
}

export const spawnAs = (way: RunAs, program: string, args: readonly string[], options: SpawnOptions) => {
  const [file = program, ...rest] = [...way.prefix, program, ...args]
  return spawn(file, rest, { ...options, ...way.options })
}

/** Gives a whole folder to the way's owner; nothing to do for an ordinary user. */
export async function giveTo(way: RunAs, folder: string): Promise<void> {
  if (process.getuid?.() !== 0) return
  if ((await stat(folder)).uid !== way.owner.uid) {
    for (const entry of await readdir(folder, { recursive: true })) {
      await lchown(path.join(folder, entry), way.owner.uid, way.owner.gid)
    }
    await chown(folder, way.owner.uid, way.owner.gid)
  }
}

async function waysToRun(): Promise<readonly RunAs[]> {
  if (process.getuid === undefined) {
    return [{ says: 'as you', owner: { uid: 0, gid: 0 }, prefix: [], options: {} }]
  }
  const self = { uid: process.getuid(), gid: process.getgid?.() ?? 0 }
  const other = await unprivilegedUser()
  const inNamespace: RunAs = {
    says: 'in a user namespace',
    owner: self,
    prefix: ['unshare', '--user', `--map-user=${other.uid}`, `--map-group=${other.gid}`],
    options: {},
  }
  if (self.uid !== 0) {
    return hasName() ? [{ says: 'as you', owner: self, prefix: [], options: {} }] : [inNamespace]
  }
  const setpriv = ['setpriv', `--reuid=${other.uid}`, `--regid=${other.gid}`, '--clear-groups']
  const passThrough = ['--inh-caps=-all,+dac_override', '--ambient-caps=-all,+dac_override']
  return [
    { says: `as user ${other.uid}`, owner: other, prefix: [], options: other },
    inNamespace,
    {
      says: `as user ${other.uid} with leave to pass`,
      owner: other,
      prefix: [...setpriv, ...passThrough],
      options: {},
    },
  ]
}

/** initdb stops when the user it runs as has no name on this machine. */
function hasName(): boolean {
  try {
    return os.userInfo().username !== ''
  } catch {
    return false
  }
}

async function unprivilegedUser(): Promise<Owner> {
  const lines = (await readFile('/etc/passwd', 'utf8').catch(() => ''))
    .split('\n')
    .map((line) => line.split(':'))
  const row = ['postgres', 'nobody'].map((name) => lines.find((line) => line[0] === name)).find(Boolean)
  return { uid: Number(row?.[2] ?? 65_534), gid: Number(row?.[3] ?? 65_534) }
}

/** Undefined when it works, else what went wrong. Tried for real: modes, mounts and container rules are too many to guess. */
async function probe(way: RunAs, program: string, folder: string): Promise<string | undefined> {
  const script =
    '"$1" --version && test -x "$2" && test -w "$2" || { echo "may not write in $2" >&2; exit 1; }'
  const [file = 'sh', ...rest] = [...way.prefix, 'sh', '-c', script, 'sh', program, folder]
  try {
    await run(file, rest, { ...(way.options as Owner), cwd: '/', timeout: 10_000 })
    return undefined
  } catch (fault) {
    return String((fault as { stderr?: string }).stderr || (fault as Error).message)
      .trim()
      .replaceAll('\n', ', ')
  }
}
