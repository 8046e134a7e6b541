import { execFileSync } from 'node:child_process'
import { readdirSync, readFileSync, readlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import type { ServerFolder } from './folder.ts'

const fileOf = (folder: ServerFolder): string => path.join(folder.cluster, 'postmaster.pid')

/**
 * The process id of a server that already runs on this cluster: one whose supervisor was killed.
 * The file alone proves nothing: after a crash of the machine its number may belong to anybody.
 */
export function runningPostmaster(folder: ServerFolder): number | undefined {
  const pid = pidInFile(folder)
  return pid !== undefined && worksIn(pid, folder.cluster) ? pid : undefined
}

/**
 * PostgreSQL refuses to start while postmaster.pid names a living process, even an unrelated one. Naming
 * this process, its parent-to-be, is what PostgreSQL takes for stale, and it still looks at the shared memory
 * named further down: backends that outlived their postmaster go on keeping a second server out. Deleting
 * the file would switch that protection off.
 */
export function disownPostmasterFile(folder: ServerFolder): void {
  if (pidInFile(folder) === undefined) return
  const [, ...rest] = readFileSync(fileOf(folder), 'utf8').split('\n')
  writeFileSync(fileOf(folder), [process.pid, ...rest].join('\n'))
}

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** Every process of the cluster, the backends of a dead postmaster included. Linux only; elsewhere none are listed. */
export function processesOf(folder: ServerFolder): readonly number[] {
  if (process.platform !== 'linux') return []
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(Number)
    .filter((pid) => pid !== process.pid && worksIn(pid, folder.cluster))
}

function pidInFile(folder: ServerFolder): number | undefined {
  try {
    const pid = Number(readFileSync(fileOf(folder), 'utf8').split('\n')[0])
    return Number.isInteger(pid) && pid > 0 ? pid : undefined
  } catch {
    return undefined
  }
}

/** PostgreSQL's processes work in their data directory; nothing else has a reason to. */
function worksIn(pid: number, cluster: string): boolean {
  if (!isAlive(pid)) return false
  try {
    if (process.platform === 'linux') {
      const command = readFileSync(`/proc/${pid}/comm`, 'utf8').trim()
      return command === 'postgres' && readlinkSync(`/proc/${pid}/cwd`) === cluster
    }
    return execFileSync('ps', ['-o', 'command=', '-p', String(pid)], { encoding: 'utf8' }).includes(cluster)
  } catch {
    return false
  }
}
