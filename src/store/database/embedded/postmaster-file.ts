import { execFileSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
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

/** Whether a process runs. One that ended and was not yet fetched by its parent (in a container perhaps never) does not. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === 'EPERM'
  }
  return process.platform !== 'linux' || !hasEnded(pid)
}

function hasEnded(pid: number): boolean {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
    return stat.slice(stat.lastIndexOf(')') + 2).startsWith('Z')
  } catch {
    return true
  }
}

function pidInFile(folder: ServerFolder): number | undefined {
  try {
    const pid = Number(readFileSync(fileOf(folder), 'utf8').split('\n')[0])
    return Number.isInteger(pid) && pid > 0 ? pid : undefined
  } catch {
    return undefined
  }
}

/** Told by its command line, which anybody may read; its working folder may not be looked up across users. */
function worksIn(pid: number, cluster: string): boolean {
  if (!isAlive(pid)) return false
  try {
    if (process.platform === 'linux') {
      const [program = '', ...args] = readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0')
      return program.endsWith('/postgres') && args[args.indexOf('-D') + 1] === cluster
    }
    return execFileSync('ps', ['-o', 'command=', '-p', String(pid)], { encoding: 'utf8' }).includes(cluster)
  } catch {
    return false
  }
}
