import { type ChildProcess, spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import net, { type AddressInfo } from 'node:net'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { isAlive } from '../../src/store/database/embedded/postmaster-file.ts'

const MAIN = path.join(import.meta.dirname, '../../src/main.ts')

/** A service in a process of its own, that can be killed and started again at the same address. */
export type ServiceProcess = {
  readonly origin: string
  readonly start: () => Promise<void>
  /** SIGKILL: nothing of it runs on. */
  readonly kill: () => Promise<void>
  /** SIGTERM; resolves with its exit code when it has ended. */
  readonly stop: () => Promise<number | null>
  /** What it wrote to its log, all of its lives. */
  readonly log: () => string
  readonly pid: () => number | undefined
}

export async function serviceProcess(settings: Readonly<Record<string, string>>): Promise<ServiceProcess> {
  const port = await freePort()
  const origin = `http://127.0.0.1:${port}`
  const environment = {
    PATH: process.env.PATH,
    PORT: String(port),
    REQUESTS_PER_MINUTE: '1000000',
    ...settings,
  }
  const lines: string[] = []
  let child: ChildProcess | undefined

  const start = async (): Promise<void> => {
    const started = spawn(process.execPath, [MAIN], { env: environment, stdio: ['ignore', 'pipe', 'pipe'] })
    child = started
    for (const stream of [started.stdout, started.stderr])
      stream.setEncoding('utf8').on('data', (text: string) => lines.push(text))
    for (const end = Date.now() + 180_000; Date.now() < end; await wait(50)) {
      if (started.exitCode !== null || started.signalCode !== null)
        throw new Error(`the service ended while starting: ${lines.slice(-5).join('')}`)
      const live = await fetch(`${origin}/health/live`).catch(() => undefined)
      await live?.arrayBuffer()
      if (live?.ok) return
    }
    throw new Error(`the service did not start: ${lines.slice(-5).join('')}`)
  }
  const end = async (signal: NodeJS.Signals): Promise<number | null> => {
    const ending = child
    if (!ending || ending.exitCode !== null || ending.signalCode !== null) return ending?.exitCode ?? null
    const ended = new Promise<number | null>((resolve) => ending.once('exit', resolve))
    ending.kill(signal)
    return ended
  }
  return {
    origin,
    start,
    kill: async () => void (await end('SIGKILL')),
    stop: () => end('SIGTERM'),
    log: () => lines.join(''),
    pid: () => child?.pid,
  }
}

export const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = net.createServer().once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo
      server.close(() => resolve(port))
    })
  })

/** The living process that a file of the embedded server's folder names. */
export function processIn(
  dataFolder: string,
  file: 'cluster/postmaster.pid' | 'supervisor.pid',
): number | undefined {
  try {
    const pid = Number(readFileSync(path.join(dataFolder, 'postgres', file), 'utf8').split('\n')[0])
    return pid > 0 && isAlive(pid) ? pid : undefined
  } catch {
    return undefined
  }
}

export function killHard(pid: number | undefined): boolean {
  if (pid === undefined) return false
  try {
    process.kill(pid, 'SIGKILL')
    return true
  } catch {
    return false
  }
}
