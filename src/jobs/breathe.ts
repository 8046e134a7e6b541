import { setImmediate as turn } from 'node:timers/promises'

/** As long as one piece of a job may keep everybody else waiting, milliseconds. */
const LONGEST_MS = 10

/**
 * For work of many small pieces that nobody waits for: awaited between them, it lets everything else have its turn as soon
 * as the pieces together took as long as anybody should wait.
 */
export function breathing(longestMs = LONGEST_MS): () => Promise<void> | void {
  let since = performance.now()
  return () => {
    if (performance.now() - since < longestMs) return
    return turn().then(() => {
      since = performance.now()
    })
  }
}
