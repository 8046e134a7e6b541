import { spawn } from 'node:child_process'
import { closeSync, openSync } from 'node:fs'
import net from 'node:net'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { OutsideFailure } from '../../../base/outside-failure.ts'
import { databaseUrl, openServerFolder, type ServerFolder } from './folder.ts'
import type { SupervisorOptions } from './supervisor.ts'

export type HeldServer = {
  /** As the server's superuser, where no other of its users is named; all have the password of the folder. */
  readonly url: (database: string, user?: string) => string
  /** Lets go: the server stops when nobody holds it any more. */
  readonly release: () => void
}

export type HoldOptions = {
  readonly dataFolder: string
  /** PostgreSQL settings as `name=value`, used by the process that comes first. */
  readonly settings?: readonly string[]
  readonly lingerMs?: number
  /** How long to wait for the server, milliseconds. */
  readonly patienceMs?: number
  readonly onTrouble?: (message: string) => void
}

/** How long after a start that failed the next is tried. */
const AGAIN_MS = 2_000

const SETTINGS = ['max_connections=200', 'password_encryption=scram-sha-256', 'log_min_messages=warning']

/**
 * Holds the embedded PostgreSQL of a data folder, starting it when it does not run. Several processes may
 * hold one folder. While held, a supervisor that dies is replaced; the server itself keeps running meanwhile.
 * Throws OutsideFailure with what to do when it can't run here.
 */
export async function holdEmbeddedServer(options: HoldOptions): Promise<HeldServer> {
  const folder = openServerFolder(options.dataFolder)
  let released = false
  let socket: net.Socket
  const hold = async (): Promise<void> => {
    socket = await waitUntilReady(folder, options)
    // Let go while the supervisor was being replaced.
    if (released) return void socket.destroy()
    socket.unref()
    socket.once('close', () => void holdAgain())
  }
  // For as long as it takes: a disk that is full now has room again later.
  const holdAgain = async (): Promise<void> => {
    while (!released) {
      try {
        return await hold()
      } catch (fault) {
        options.onTrouble?.((fault as Error).message)
        await wait(AGAIN_MS, undefined, { ref: false })
      }
    }
  }
  await hold()
  return {
    url: (database, user) => databaseUrl(folder, database, user),
    release: () => {
      released = true
      socket.destroy()
    },
  }
}

async function waitUntilReady(folder: ServerFolder, options: HoldOptions): Promise<net.Socket> {
  const end = Date.now() + (options.patienceMs ?? 60_000)
  for (let spawned = 0; Date.now() < end; ) {
    const answer = await ask(folder, end - Date.now())
    if (answer.socket) return answer.socket
    if (answer.failed) throw new OutsideFailure(answer.failed)
    if (answer.nobody && Date.now() - spawned > 1_000) {
      startSupervisor(folder, options)
      spawned = Date.now()
    }
    await wait(20)
  }
  throw new OutsideFailure(`The embedded PostgreSQL did not start in time; see ${folder.log}`)
}

type Answer = { readonly socket?: net.Socket; readonly failed?: string; readonly nobody?: boolean }

/** Connects and listens for the supervisor's word; a connection that closes first means: ask again. */
const ask = (folder: ServerFolder, patience: number): Promise<Answer> =>
  new Promise((resolve) => {
    const socket = net.connect(folder.control)
    const giveUp = (answer: Answer) => {
      socket.destroy()
      resolve(answer)
    }
    socket.setTimeout(Math.max(patience, 1), () => giveUp({}))
    socket.once('error', () => giveUp({ nobody: true }))
    socket.once('close', () => giveUp({}))
    let heard = ''
    socket.setEncoding('utf8').on('data', (text) => {
      heard += text
      for (const line of heard.split('\n').slice(0, -1)) {
        if (line.startsWith('failed ')) return giveUp({ failed: line.slice(7) })
        if (line === 'closing') return giveUp({})
        if (line === 'ready') {
          socket.setTimeout(0)
          socket.removeAllListeners('data').resume()
          return resolve({ socket })
        }
      }
    })
  })

function startSupervisor(folder: ServerFolder, options: HoldOptions): void {
  const chosen: SupervisorOptions = {
    dataFolder: path.dirname(folder.root),
    settings: [...SETTINGS, ...(options.settings ?? [])],
    lingerMs: options.lingerMs ?? 2_000,
  }
  const program = fileURLToPath(new URL('./supervisor.ts', import.meta.url))
  const log = openSync(folder.log, 'a', 0o600)
  // A session of its own: Ctrl-C at the terminal is meant for the service, which still has writes to finish.
  const child = spawn(process.execPath, [program, JSON.stringify(chosen)], {
    detached: true,
    stdio: ['ignore', log, log],
    env: { PATH: process.env.PATH },
    cwd: '/',
  })
  child.on('error', () => {})
  child.unref()
  closeSync(log)
}
