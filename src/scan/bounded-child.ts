import { type ChildProcess, spawn } from 'node:child_process'
import { readFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { createInterface } from 'node:readline'
import { Readable, type Writable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { OutsideFailure } from '../base/outside-failure.ts'
import { withoutNetwork } from './without-network.ts'

/** How a child process ended: by itself, at a limit that we set, or by a hand that is not ours. */
export type Ending =
  | { readonly how: 'finished' }
  | { readonly how: 'timed-out' }
  | { readonly how: 'out-of-memory' }
  | { readonly how: 'ended-outside'; readonly detail: string }

const ROOT = path.resolve(import.meta.dirname, '../..')
/** What a child needs of the program; the data folder, which may lie beside it, is none of it. */
export const PROGRAM: readonly string[] = ['node_modules', 'src', 'package.json'].map((it) =>
  path.join(ROOT, it),
)

const MEMORY_POLL_MS = 50
const MB = 1024 * 1024
/** What V8 prints when its heap limit is reached, and what Node answers when a buffer can't be had. */
const HEAP_GONE = /heap out of memory|Allocation failed|Array buffer allocation failed|ENOMEM/i

/** A deadline that the listener moves on as the child makes progress. */
export type Deadline = { readonly allow: (ms: number) => void }

/** Behind everything that answers somebody: what reads a large paper takes the time that is left. */
const LESS_URGENT = 5

/** What goes to the child, piece by piece, each as the one before it has been taken. `ended`: it takes no more. */
export type Input = (
  ended: Promise<unknown>,
) => Iterable<Uint8Array | string> | AsyncIterable<Uint8Array | string>

/** For more than JSON: called with what the child writes to its standard output, as it comes. */
export type Output = (bytes: Buffer) => void

/**
 * Runs a script of ours in a process of its own and hands over each line of JSON that it writes to its fourth
 * descriptor. The process gets no environment but PATH, no network where the machine allows that, may read only what
 * `mayRead` names, can start nothing, and is killed at the deadline or when its resident memory passes the limit.
 */
export async function runBounded(options: {
  readonly script: string
  readonly args: readonly string[]
  readonly mayRead: readonly string[]
  readonly memoryBytes: number
  readonly firstMs: number
  readonly signal: AbortSignal | undefined
  readonly input?: Input
  readonly output?: Output
  readonly onMessage: (message: unknown, deadline: Deadline) => void | Promise<void>
}): Promise<Ending> {
  const heapMb = Math.max(64, Math.floor((options.memoryBytes / MB) * 0.75))
  const [program = process.execPath, ...before] = [...(await withoutNetwork()), process.execPath]
  const child = spawn(
    program,
    [
      ...before,
      `--max-old-space-size=${heapMb}`,
      '--disable-warning=SecurityWarning',
      '--disable-warning=ExperimentalWarning',
      '--permission',
      '--allow-addons',
      '--allow-worker',
      ...options.mayRead.map((place) => `--allow-fs-read=${place}`),
      options.script,
      ...options.args,
    ],
    {
      stdio: [options.input ? 'pipe' : 'ignore', options.output ? 'pipe' : 'ignore', 'pipe', 'pipe'],
      env: { PATH: process.env.PATH ?? '' },
    },
  )
  beLessUrgent(child)
  let ending: Ending | undefined
  const end = (as: Ending): void => {
    ending ??= as
    child.kill('SIGKILL')
  }
  let timer = setTimeout(() => end({ how: 'timed-out' }), options.firstMs)
  const deadline: Deadline = {
    allow: (ms) => {
      clearTimeout(timer)
      timer = setTimeout(() => end({ how: 'timed-out' }), ms)
    },
  }
  const memory = setInterval(() => {
    void residentBytes(child).then((bytes) => {
      if (bytes > options.memoryBytes) end({ how: 'out-of-memory' })
    })
  }, MEMORY_POLL_MS)
  const abort = (): void => end({ how: 'ended-outside', detail: 'the reading was called off' })
  options.signal?.addEventListener('abort', abort, { once: true })
  if (options.signal?.aborted) abort()
  let complaint = ''
  child.stderr!.on('data', (bytes: Buffer) => {
    complaint = (complaint + bytes.toString('latin1')).slice(-4000)
  })
  const ended = new Promise<{ code: number | null; signal: string | null }>((resolve, reject) => {
    child.once('error', (cause) =>
      reject(new OutsideFailure('the recognizer could not be started', { cause, retryAfterSeconds: 30 })),
    )
    child.once('close', (code, signal) => resolve({ code, signal }))
  })
  if (options.output) child.stdout!.on('data', options.output)
  // A child that has ended takes no more: how it ended says why. A fault of what is read to feed it is a fault of ours.
  let unfed: unknown
  const over = ended.catch(() => {})
  const feeding =
    options.input &&
    pipeline(
      Readable.from(
        fed(options.input(over), (fault) => {
          unfed = fault
        }),
      ),
      child.stdin as Writable,
    ).catch(() => {})
  try {
    const listening = (async () => {
      for await (const line of createInterface({ input: child.stdio[3] as Readable })) {
        if (line !== '') await options.onMessage(JSON.parse(line), deadline)
      }
    })()
    const [{ code, signal }] = await Promise.all([ended, listening, feeding])
    if (unfed !== undefined) throw unfed
    if (ending) return ending
    if (code === 0) return { how: 'finished' }
    if (HEAP_GONE.test(complaint)) return { how: 'out-of-memory' }
    const tail = complaint.trim().split('\n').slice(-3).join(' ').slice(0, 300)
    return { how: 'ended-outside', detail: `${signal ?? `exit code ${code}`}${tail ? `: ${tail}` : ''}` }
  } finally {
    clearTimeout(timer)
    clearInterval(memory)
    options.signal?.removeEventListener('abort', abort)
    child.kill('SIGKILL')
  }
}

async function* fed(
  input: ReturnType<Input>,
  onFault: (fault: unknown) => void,
): AsyncGenerator<Uint8Array | string> {
  try {
    yield* input
  } catch (fault) {
    onFault(fault)
    throw fault
  }
}

function beLessUrgent({ pid }: ChildProcess): void {
  try {
    if (pid !== undefined) os.setPriority(pid, LESS_URGENT)
  } catch {
    // It has ended already, or this machine does not allow it: it is bounded all the same.
  }
}

/** Resident memory as the kernel counts it; 0 where there is no /proc (there the heap limit alone holds). */
async function residentBytes(child: ChildProcess): Promise<number> {
  try {
    const status = await readFile(`/proc/${child.pid}/status`, 'utf8')
    return Number(/^VmRSS:\s+(\d+) kB/m.exec(status)?.[1] ?? 0) * 1024
  } catch {
    return 0
  }
}
