import { setTimeout as wait } from 'node:timers/promises'
import { administer } from '../../store/database/transact.ts'
import {
  endRound,
  lastRound,
  noteOriginal,
  originalsAtFault,
  originalsNamedAfter,
} from '../../store/original-faults.ts'
import type { OperationContext } from '../context.ts'
import { type Repeating, repeating } from './repeating.ts'

type Context = Pick<OperationContext, 'database' | 'files' | 'clock'>

const AT_ONCE = 200
/** For each part of the time that a file takes to be looked through, so many parts of rest: disks have other work. */
const REST = 3

export type LookedThrough = { readonly looked: number; readonly atFault: number }

/**
 * Looks at every original that a record names: whether it is there, and has the bytes that came in. What is found is kept
 * for the metrics, and is no fault any more once the file was sent again and looked at.
 */
export async function lookThroughOriginals(
  { database, files, clock }: Context,
  signal: AbortSignal,
  rest = REST,
): Promise<LookedThrough> {
  let looked = 0
  const look = async (hash: string): Promise<void> => {
    const from = performance.now()
    const state = await files.verify(hash)
    await administer(database, (tx) => noteOriginal(tx, hash, state, clock()))
    looked += 1
    const restMs = Math.min(60_000, rest * (performance.now() - from))
    if (restMs > 0) await wait(restMs, undefined, { signal, ref: false })
  }
  // What was at fault may be named by nothing any more, and would stay at fault for ever.
  const before = await administer(database, originalsAtFault)
  for (let after = ''; ; ) {
    const some = await administer(database, (tx) => originalsNamedAfter(tx, after, AT_ONCE))
    for (const hash of some) {
      signal.throwIfAborted()
      await look(hash)
    }
    after = some.at(-1) ?? ''
    if (some.length < AT_ONCE) break
  }
  for (const { hash, state } of before)
    if (state === 'missing' && !(await administer(database, (tx) => isNamed(tx, hash))))
      await administer(database, (tx) => noteOriginal(tx, hash, 'whole', clock()))
  await administer(database, (tx) => endRound(tx, looked, clock()))
  return { looked, atFault: (await administer(database, originalsAtFault)).length }
}

type Tx = Parameters<Parameters<typeof administer>[1]>[0]
const isNamed = async (tx: Tx, hash: string): Promise<boolean> =>
  (await originalsNamedAfter(tx, before(hash), 1))[0] === hash

/** The text that comes right before a hash. */
const before = (hash: string): string => hash.slice(0, -1)

const WEEK_MS = 7 * 86_400_000

/** Does so once a week, over all processes: whichever looks first finds that it is time. */
export const keepLookingThrough = (
  context: Context,
  options: Pick<Repeating, 'onTrouble'> & { readonly everyMs?: number },
): (() => Promise<void>) =>
  repeating(
    async (signal) => {
      const last = await administer(context.database, lastRound)
      if (last && context.clock().getTime() - last.getTime() < (options.everyMs ?? WEEK_MS)) return
      const { atFault } = await lookThroughOriginals(context, signal)
      if (atFault > 0)
        options.onTrouble(new Error(`${atFault} originals are damaged or missing: npm run backup names them`))
    },
    { firstMs: 120_000, everyMs: 3_600_000, failing: 'originals are not looked through', ...options },
  )
