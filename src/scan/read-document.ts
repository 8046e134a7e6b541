import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { OutsideFailure } from '../base/outside-failure.ts'
import { type Ending, PROGRAM, runBounded } from './bounded-child.ts'
import { DEFAULT_LIMITS, type Limits } from './limits.ts'
import type { Message } from './message.ts'
import {
  type DocumentReading,
  type PageReading,
  type Refusal,
  sayRefusal,
  sayUnread,
  type UnreadReason,
} from './outcome.ts'

export type ReadOptions = {
  /** First and last page wanted, counted from 1; the whole document where left out. */
  readonly from?: number
  readonly to?: number
  /** Told how many pages there are as soon as that is known. */
  readonly onOpened?: (pageCount: number) => void
  /** Called with each page as it is read; the reading waits for it. */
  readonly onPage?: (reading: PageReading) => void | Promise<void>
  readonly signal?: AbortSignal
  /** `leave`: pages that are pictures stay unread, which takes a fraction of the time. */
  readonly pictures?: 'read' | 'leave'
}

const SCRIPT = fileURLToPath(new URL('./child/main.ts', import.meta.url))
/** A process that is ended from outside this often in a row is not ended by chance. */
const MOST_ENDINGS_IN_A_ROW = 3

/**
 * The pages of a PDF as words with boxes, read in a child process with limits. What is wrong with the file is an
 * outcome; a page that breaks the reader is unread and the others are read all the same. Throws `OutsideFailure` when
 * the child process can't run here at all.
 */
export async function readDocument(
  source: Uint8Array | string,
  limits: Partial<Limits> = {},
  options: ReadOptions = {},
): Promise<DocumentReading> {
  const held: Limits = { ...DEFAULT_LIMITS, ...limits }
  if (typeof source === 'string') return readFileWithin(resolve(source), held, options)
  if (source.byteLength > held.maxBytes) return refused('too-big', held, null, [])
  const folder = await mkdtemp(join(tmpdir(), 'asfound-scan-'))
  try {
    const path = join(folder, 'document.pdf')
    await writeFile(path, source)
    return await readFileWithin(path, held, options)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

type Progress = {
  pageCount: number | null
  notes: readonly string[]
  refusal: Refusal | undefined
  pages: PageReading[]
  /** The page being read, null between pages. */
  at: number | null
  next: number
}

async function readFileWithin(path: string, limits: Limits, options: ReadOptions): Promise<DocumentReading> {
  if ((await stat(path)).size > limits.maxBytes) return refused('too-big', limits, null, [])
  const until = Date.now() + limits.documentMs
  const progress: Progress = {
    pageCount: null,
    notes: [],
    refusal: undefined,
    pages: [],
    at: null,
    next: options.from ?? 1,
  }
  for (let endings = 0; ; ) {
    const before = progress.next
    const ending = await runOnce(path, limits, options, progress, until)
    if (options.signal?.aborted)
      throw new OutsideFailure('the reading was called off', { cause: options.signal.reason })
    if (progress.refusal) return refused(progress.refusal, limits, progress.pageCount, progress.pages)
    if (ending.how === 'finished') break
    if (Date.now() >= until) return refused('timed-out', limits, progress.pageCount, progress.pages)
    endings = ending.how === 'ended-outside' && progress.next === before ? endings + 1 : 0
    if (progress.at === null || endings >= MOST_ENDINGS_IN_A_ROW) {
      if (ending.how !== 'ended-outside')
        return refused(ending.how, limits, progress.pageCount, progress.pages)
      throw new OutsideFailure(`the recognizer ended: ${ending.detail}`, { retryAfterSeconds: 60 })
    }
    await keep(unread(progress.at, reasonOf(ending), limits), progress, options)
    if (progress.next > lastPage(progress, options)) break
  }
  return concluded(progress, limits)
}

const lastPage = ({ pageCount }: Progress, { to }: ReadOptions): number =>
  Math.min(pageCount ?? 0, to ?? Number.MAX_SAFE_INTEGER)

async function runOnce(
  path: string,
  limits: Limits,
  options: ReadOptions,
  progress: Progress,
  until: number,
): Promise<Ending> {
  progress.at = null
  const within = (ms: number): number => Math.max(1, Math.min(ms, until - Date.now()))
  return runBounded({
    script: SCRIPT,
    args: [
      path,
      String(progress.next),
      String(options.to ?? 0),
      String(limits.maxPages),
      options.pictures ?? 'read',
    ],
    mayRead: [...PROGRAM, path],
    memoryBytes: limits.memoryBytes,
    firstMs: within(limits.openMs),
    signal: options.signal,
    onMessage: async (raw, deadline) => {
      const message = raw as Message
      switch (message.type) {
        case 'refused':
          progress.refusal = message.why
          break
        case 'opened':
          progress.pageCount = message.pageCount
          progress.notes = message.notes
          options.onOpened?.(message.pageCount)
          if (message.pageCount > limits.maxPages) progress.refusal = 'too-many-pages'
          break
        case 'begin':
          progress.at = message.page
          deadline.allow(within(limits.pageMs))
          break
        case 'done':
          await keep(message.reading, progress, options)
          break
      }
    },
  })
}

async function keep(reading: PageReading, progress: Progress, options: ReadOptions): Promise<void> {
  progress.at = null
  progress.next = (reading.state === 'read' ? reading.words.page : reading.page) + 1
  progress.pages.push(reading)
  await options.onPage?.(reading)
}

const reasonOf = (ending: Exclude<Ending, { how: 'finished' }>): UnreadReason =>
  ending.how === 'ended-outside' ? 'recognizer-ended' : ending.how

const unread = (page: number, why: UnreadReason, limits: Limits): PageReading => ({
  state: 'unread',
  page,
  why,
  says: sayUnread(why, limits),
  mayRetry: why === 'recognizer-ended',
})

const refused = (
  why: Refusal,
  limits: Limits,
  pageCount: number | null,
  pages: readonly PageReading[],
): DocumentReading => ({ outcome: why, says: sayRefusal(why, limits, pageCount), pageCount, pages })

function concluded(progress: Progress, limits: Limits): DocumentReading {
  const { pages, notes } = progress
  const pageCount = progress.pageCount ?? 0
  const withoutText = pages.filter((page) => page.state === 'unread' && page.why === 'no-text-layer')
  if (pages.length > 0 && withoutText.length > 0 && pages.every((page) => page.state === 'unread'))
    return refused('pure-scan', limits, pageCount, pages)
  return { outcome: 'read', pageCount, pages, notes }
}
