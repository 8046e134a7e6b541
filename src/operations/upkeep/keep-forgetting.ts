import type { Database } from '../../store/database/database.ts'
import { administer } from '../../store/database/transact.ts'
import { forgetAnswers } from '../../store/kept-answers.ts'
import { repeating } from './repeating.ts'

/**
 * How long an answer is kept for whoever sends its request again under the same Idempotency-Key. Programs repeat within
 * minutes; a phone that was put away with an inspection not yet sent may do so after months.
 */
export const ANSWERS_KEPT_DAYS = 90
/** Few enough that no other transaction waits for the rows. */
const AT_ONCE = 5_000

/** Forgets every answer that is older than that; how many it were. Any number of processes may do so at once. */
export async function forgetOldAnswers(database: Database): Promise<number> {
  for (let forgotten = 0; ; ) {
    const some = await administer(database, (tx) => forgetAnswers(tx, ANSWERS_KEPT_DAYS, AT_ONCE))
    forgotten += some
    if (some < AT_ONCE) return forgotten
  }
}

type Options = {
  readonly firstMs?: number
  readonly everyMs?: number
  readonly onTrouble: (fault: Error) => void
}

/** Does so soon after the start and then daily, until it is stopped; stopping waits for the round under way. */
export const keepForgetting = (
  database: Database,
  { firstMs = 60_000, everyMs = 86_400_000, onTrouble }: Options,
): (() => Promise<void>) =>
  repeating(() => forgetOldAnswers(database), {
    firstMs,
    everyMs,
    failing: 'old answers are kept on',
    onTrouble,
  })
