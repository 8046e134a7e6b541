import { writeSync } from 'node:fs'

/** The lines go to the fourth descriptor: whatever a library prints can't get between them. */
const MESSAGES = 3

/** Tells the parent one thing, as a line of JSON; returns when it is in the pipe. */
export function say(message: object): void {
  const bytes = Buffer.from(`${JSON.stringify(message)}\n`)
  for (let at = 0; at < bytes.length; ) {
    try {
      at += writeSync(MESSAGES, bytes, at)
    } catch (error) {
      // The pipe is full until the parent has read: wait for it.
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5)
    }
  }
}
