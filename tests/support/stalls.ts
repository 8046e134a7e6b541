import { monitorEventLoopDelay } from 'node:perf_hooks'
import { setTimeout as wait } from 'node:timers/promises'

/** For how long at most nobody else had a turn while `work` was done, milliseconds. */
export async function longestStall(work: () => Promise<unknown>): Promise<number> {
  const delay = monitorEventLoopDelay({ resolution: 5 })
  delay.enable()
  await wait(20)
  delay.reset()
  await work()
  // A stall at the very end is seen with the next turn.
  await wait(20)
  delay.disable()
  return delay.max / 1e6
}
