import { setTimeout as wait } from 'node:timers/promises'

/** Often enough that what others do in between is no part of it, milliseconds. */
const LOOK_MS = 2

/**
 * For how long at most nobody else had a turn while `work` was done, milliseconds: of this thread's own work, so that a
 * machine on which much else runs is no part of it.
 */
export async function longestStall(work: () => Promise<unknown>): Promise<number> {
  let longest = 0
  let before = process.threadCpuUsage()
  const look = (): void => {
    const now = process.threadCpuUsage()
    longest = Math.max(longest, now.user + now.system - before.user - before.system)
    before = now
  }
  const looking = setInterval(look, LOOK_MS)
  try {
    await work()
    // A stall at the very end is seen with the next turn.
    await wait(3 * LOOK_MS)
  } finally {
    clearInterval(looking)
  }
  return longest / 1_000
}
