import { type ChildProcess, spawn } from 'node:child_process'
import path from 'node:path'
import { Impossible, invariant } from '../../base/invariant.ts'
import { OutsideFailure } from '../../base/outside-failure.ts'
import type { Answer } from './child.ts'
import type { Printed, Sheet } from './sheet.ts'

export type Press = {
  /**
   * Prints a sheet. Throws OutsideFailure when the printing process can't be started or takes too long, Impossible
   * when the sheet can't be printed by this version at all.
   */
  readonly print: (sheet: Sheet) => Promise<Printed>
  readonly close: () => void
}

type Waiting = {
  readonly sheet: Sheet
  readonly resolve: (printed: Printed) => void
  readonly reject: (fault: Error) => void
}

/** A report of many pages takes a fraction of a second; the first one also starts the process. */
const LIMIT_MS = 20_000
const ROOT = path.resolve(import.meta.dirname, '../../..')

/**
 * Prints in a process of its own, started with the first letter: the typesetter is native code, and where it fails it
 * ends its process. That costs the letter that was on the press; those that wait behind it go to the next process.
 */
export function openPress(limitMs = LIMIT_MS): Press {
  const queue: Waiting[] = []
  let child: ChildProcess | undefined
  let timer: NodeJS.Timeout | undefined
  let closed = false

  const next = (): void => {
    clearTimeout(timer)
    const [head] = queue
    if (!head) {
      hold(child, false)
      return
    }
    child ??= start()
    hold(child, true)
    timer = setTimeout(() => child?.kill('SIGKILL'), limitMs)
    child.send(head.sheet)
  }

  const settle = (finish: (head: Waiting) => void): void => {
    const head = queue.shift()
    if (head) finish(head)
    next()
  }

  const start = (): ChildProcess => {
    const started = startChild()
    started.on('message', (answer: Answer) =>
      settle(({ resolve, reject }) => {
        if ('fault' in answer) reject(new Impossible(answer.fault))
        // Bytes cross the channel as a plain array of them.
        else resolve({ ...answer.printed, pdf: Buffer.from(answer.printed.pdf) })
      }),
    )
    const ended = (cause?: unknown): void => {
      if (child !== started) return
      child = undefined
      const message = 'The letter could not be printed: the printing process ended'
      const options = cause instanceof Error ? { cause, retryAfterSeconds: 10 } : {}
      settle(({ reject }) => reject(new OutsideFailure(message, options)))
    }
    started.once('error', ended)
    started.once('exit', () => ended())
    return started
  }

  return {
    print: (sheet) => {
      invariant(!closed, 'the press is closed')
      return new Promise((resolve, reject) => {
        queue.push({ sheet, resolve, reject })
        if (queue.length === 1) next()
      })
    },
    close: () => {
      closed = true
      clearTimeout(timer)
      const ending = child
      child = undefined
      ending?.kill('SIGKILL')
      for (const { reject } of queue.splice(0)) reject(new OutsideFailure('The service is stopping'))
    },
  }
}

/** No environment but PATH, no file but its own and the libraries', no network by any means of Node's. */
function startChild(): ChildProcess {
  const mayRead = [path.join(ROOT, 'node_modules'), path.join(ROOT, 'src'), path.join(ROOT, 'package.json')]
  return spawn(
    process.execPath,
    [
      '--disable-warning=SecurityWarning',
      '--disable-warning=ExperimentalWarning',
      '--permission',
      '--allow-addons',
      ...mayRead.map((place) => `--allow-fs-read=${place}`),
      path.join(import.meta.dirname, 'child.ts'),
    ],
    {
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
      serialization: 'advanced',
      env: {
        PATH: process.env.PATH ?? '',
        FONTCONFIG_FILE: path.join(import.meta.dirname, 'no-system-fonts.conf'),
      },
    },
  )
}

/** A press with nothing to do keeps no program from ending. */
function hold(child: ChildProcess | undefined, needed: boolean): void {
  if (needed) child?.ref()
  else child?.unref()
  if (needed) child?.channel?.ref()
  else child?.channel?.unref()
}
