import { createHash } from 'node:crypto'
import { sql } from 'kysely'
import type { Tx } from '../database/database.ts'

/** What is guessed at, and how often it may be before each further try has to wait. */
export type Guarded = {
  readonly what: 'name' | 'address' | 'code' | 'taken'
  readonly which: string
  readonly free: number
}

/** Waits double from half a minute to a quarter of an hour; a day without a try forgets. */
const FIRST_WAIT_SECONDS = 30
const LONGEST_WAIT_SECONDS = 900
const FORGET_MS = 86_400_000

/** Kept by hash: the table is no list of names and addresses. */
const keyOf = ({ what, which }: Guarded): Buffer => createHash('sha256').update(`${what} ${which}`).digest()

/**
 * Counts a try before it is made, so that any number at once are all counted, and answers 0; or does not count it and
 * answers for how many seconds to wait. Names that do not exist are counted like those that do. At the door; in the
 * database, so that it holds over all processes.
 */
export async function beginTry(tx: Tx, guarded: Guarded, at: Date): Promise<number> {
  const key = keyOf(guarded)
  await sql`select pg_advisory_xact_lock(${key.readBigInt64BE().toString()}::bigint)`.execute(tx)
  const found = await tx
    .selectFrom('throttle')
    .select(['tries', 'wait_until', 'changed_at'])
    .where('key', '=', key)
    .executeTakeFirst()
  const waitMs = (found?.wait_until?.getTime() ?? 0) - at.getTime()
  // Longer than anybody ever waits: the clock was set back since. The tries are counted on.
  if (waitMs > 0 && waitMs <= LONGEST_WAIT_SECONDS * 1_000) return Math.ceil(waitMs / 1_000)
  const known = found && at.getTime() - found.changed_at.getTime() < FORGET_MS
  const tries = (known ? found.tries : 0) + 1
  const row = { tries, wait_until: waitUntil(tries - guarded.free, at), changed_at: at }
  await tx
    .insertInto('throttle')
    .values({ key, ...row })
    .onConflict((conflict) => conflict.column('key').doUpdateSet(row))
    .execute()
  return 0
}

/** For how many seconds to wait before the next try, without making one. */
export async function secondsToWait(tx: Tx, guarded: Guarded, at: Date): Promise<number> {
  const found = await tx
    .selectFrom('throttle')
    .select('wait_until')
    .where('key', '=', keyOf(guarded))
    .executeTakeFirst()
  const waitMs = (found?.wait_until?.getTime() ?? 0) - at.getTime()
  return waitMs > 0 && waitMs <= LONGEST_WAIT_SECONDS * 1_000 ? Math.ceil(waitMs / 1_000) : 0
}

/** When the next try may be made, after so many more than are free. */
function waitUntil(over: number, at: Date): Date | null {
  if (over <= 0) return null
  const seconds = Math.min(FIRST_WAIT_SECONDS * 2 ** Math.min(over - 1, 10), LONGEST_WAIT_SECONDS)
  return new Date(at.getTime() + seconds * 1_000)
}

/** The right one was given: what was tried at it is forgotten. */
export async function forgetTries(tx: Tx, guarded: Guarded): Promise<void> {
  await tx.deleteFrom('throttle').where('key', '=', keyOf(guarded)).execute()
}

/** Takes back one try that turned out right, where the others count on: at an address that many people share. */
export async function takeBackTry(tx: Tx, guarded: Guarded): Promise<void> {
  await tx
    .updateTable('throttle')
    .set((eb) => ({ tries: sql<number>`greatest(${eb.ref('tries')} - 1, 0)`, wait_until: null }))
    .where('key', '=', keyOf(guarded))
    .execute()
}

/** Removes counts that are forgotten anyway. */
export async function sweepTries(tx: Tx, at: Date): Promise<void> {
  await tx
    .deleteFrom('throttle')
    .where('changed_at', '<', new Date(at.getTime() - FORGET_MS))
    .execute()
}
