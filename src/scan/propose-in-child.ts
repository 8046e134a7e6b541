import { fileURLToPath } from 'node:url'
import { OutsideFailure } from '../base/outside-failure.ts'
import { takingTurns } from '../base/turns.ts'
import type { ProposingAsked } from '../reading/propose-document.ts'
import { type Ending, PROGRAM, runBounded } from './bounded-child.ts'

/** What the proposing process says, a line of JSON each: the pages as it comes to them, numbers to look up, proposals. */
type ProposeMessage =
  | { readonly type: 'page'; readonly page: number }
  | { readonly type: 'candidates'; readonly numbers: readonly string[] }
  | { readonly type: 'proposal'; readonly text: string }
  | { readonly type: 'done' }

export type ProposingLimits = {
  /** For one page; the document has as long as its pages. */
  readonly pageMs: number
  /** For what is done with all of them: before the first, and after the last. */
  readonly wholeMs: number
  readonly memoryBytes: number
}

export const PROPOSING_LIMITS: ProposingLimits = {
  pageMs: 15_000,
  wholeMs: 120_000,
  memoryBytes: 2_048 * 1_048_576,
}

export type Proposing = ProposingAsked & {
  /** Whose it is: documents are taken in turns by this. */
  readonly county: string
  /** Each page that was read, from the first, with its words as JSON; called anew where a page is left out. */
  readonly pages: () => AsyncIterable<{ readonly number: number; readonly words: string }>
  /** Which of these are numbers of parcels. */
  readonly numbersAmong: (numbers: readonly string[]) => Promise<ReadonlySet<string>>
  readonly signal?: AbortSignal | undefined
}

export type ProposedTexts = {
  /** Each proposal as JSON: nobody here needs to know what it says. */
  readonly proposals: readonly string[]
  /** Pages that took too much, and of which nothing is proposed. */
  readonly leftOut: readonly number[]
  /** Whether the document as a whole took too much: nothing of it is proposed. */
  readonly gaveUp: boolean
}

const SCRIPT = fileURLToPath(new URL('./child/propose.ts', import.meta.url))
/** A document with more pages like this is not read by leaving them out one by one. */
const MOST_LEFT_OUT = 5

const inTurn = takingTurns({ what: 'papers to be proposed from', atOnce: 2, each: 2, mostWaiting: 1_000 })

/**
 * What a document's pages seem to say, worked out in a process of its own with limits: the longest paper keeps nobody
 * waiting but whoever sent it. A page that takes too much is left out, and said.
 */
export const proposeInChild = (
  asked: Proposing,
  limits: Partial<ProposingLimits> = {},
): Promise<ProposedTexts> => inTurn(asked.county, () => propose(asked, { ...PROPOSING_LIMITS, ...limits }))

async function propose(asked: Proposing, limits: ProposingLimits): Promise<ProposedTexts> {
  const leftOut: number[] = []
  for (;;) {
    const { ending, at, proposals, done } = await runOnce(asked, limits, leftOut)
    if (asked.signal?.aborted)
      throw new OutsideFailure('the proposing was called off', { cause: asked.signal.reason })
    if (ending.how === 'finished' && done) return { proposals, leftOut, gaveUp: false }
    if (ending.how === 'ended-outside' || ending.how === 'finished') {
      const detail = ending.how === 'finished' ? 'it said too little' : ending.detail
      throw new OutsideFailure(`the proposing ended: ${detail}`, { retryAfterSeconds: 60 })
    }
    if (at === null || leftOut.length === MOST_LEFT_OUT) return { proposals: [], leftOut, gaveUp: true }
    leftOut.push(at)
  }
}

type Run = {
  readonly ending: Ending
  /** The page that was looked at when it ended; null where it was none. */
  readonly at: number | null
  readonly proposals: readonly string[]
  readonly done: boolean
}

async function runOnce(asked: Proposing, limits: ProposingLimits, leftOut: readonly number[]): Promise<Run> {
  let at: number | null = null
  let done = false
  const proposals: string[] = []
  const candidates = Promise.withResolvers<readonly string[]>()

  async function* input(ended: Promise<unknown>): AsyncGenerator<string> {
    const { format, forms, tallies, cuts } = asked
    yield `${JSON.stringify({ format, forms, tallies, cuts })}\n`
    for await (const { number, words } of asked.pages()) if (!leftOut.includes(number)) yield `${words}\n`
    yield 'null\n'
    const numbers = await Promise.race([candidates.promise, ended.then(() => null)])
    if (numbers) yield `${JSON.stringify([...(await asked.numbersAmong(numbers))])}\n`
  }

  const ending = await runBounded({
    script: SCRIPT,
    args: [],
    mayRead: PROGRAM,
    memoryBytes: limits.memoryBytes,
    firstMs: limits.wholeMs,
    signal: asked.signal,
    input,
    onMessage: (raw, deadline) => {
      const message = raw as ProposeMessage
      switch (message.type) {
        case 'page':
          at = message.page
          deadline.allow(limits.pageMs)
          break
        case 'candidates':
          at = null
          deadline.allow(limits.wholeMs)
          candidates.resolve(message.numbers)
          break
        case 'proposal':
          proposals.push(message.text)
          break
        case 'done':
          done = true
      }
    },
  })
  return { ending, at, proposals, done }
}
