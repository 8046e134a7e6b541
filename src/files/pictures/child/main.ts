import { writeSync } from 'node:fs'
import { buffer } from 'node:stream/consumers'
import { say } from '../../../scan/child/say.ts'
import type { PictureMessage } from '../read-picture.ts'
import { shrunk, take } from './take.ts'

/** Reads a picture from standard input; what is made of it goes to standard output, one after the other. */
async function main([task, keepsPlace]: readonly string[]): Promise<void> {
  const bytes = await buffer(process.stdin)
  if (task === 'shrink') {
    const { small, printed } = await shrunk(bytes)
    tell({ says: 'shrunk', lengths: [small.length, printed.length] }, [small, printed])
    return
  }
  const taken = await take(bytes, keepsPlace === 'true')
  if (!taken.ok) return say({ says: 'refused', why: taken.error })
  const { original, shown, small, printed, ...told } = taken.value
  const parts = [original, shown, small, printed]
  tell({ says: 'taken', ...told, lengths: parts.map(({ length }) => length) }, parts)
}

function tell(message: PictureMessage, parts: readonly Buffer[]): void {
  say(message)
  for (const part of parts) write(part)
}

/** Returns when all of it is in the pipe. */
function write(bytes: Buffer): void {
  for (let at = 0; at < bytes.length; ) {
    try {
      at += writeSync(1, bytes, at, Math.min(65_536, bytes.length - at))
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2)
    }
  }
}

await main(process.argv.slice(2))
process.exit(0)
