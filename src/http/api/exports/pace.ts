import { type Readable, Transform } from 'node:stream'

/** How slow a reader may be. A connection of the database is held as long as it reads. */
export type Pace = {
  /** Without taking anything. */
  readonly stallMs: number
  /** What everybody is given before the pace counts. */
  readonly graceMs: number
  readonly leastBytesPerSecond: number
}

/** A reader on a bad line takes ten times as much; common practice. */
export const PACE: Pace = { stallMs: 30_000, graceMs: 60_000, leastBytesPerSecond: 8_192 }

/** Rows as they come, to a reader who takes them; from one who does not they are cut, and the connection with them. */
export function paced(rows: Readable, { stallMs, graceMs, leastBytesPerSecond }: Pace = PACE): Readable {
  const begun = performance.now()
  let taken = 0
  let waiting: number | null = null
  const out = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      taken += chunk.length
      done(null, chunk)
    },
  })
  const look = setInterval(
    () => {
      const now = performance.now()
      // The database may take its time: only what lies here and is not taken counts against the reader.
      if (!out.readableFlowing && out.readableLength === 0) waiting = null
      else if (out.readableLength >= out.readableHighWaterMark) waiting ??= now
      else waiting = null
      const stalled = waiting !== null && now - waiting > stallMs
      const allowed = graceMs + (taken / leastBytesPerSecond) * 1_000
      if (stalled || (waiting !== null && now - begun > allowed))
        out.destroy(new Error('the reader of an export takes nothing'))
    },
    Math.max(10, stallMs / 10),
  )
  look.unref()
  const drained = (): void => {
    waiting = null
  }
  out.on('drain', drained)
  out.once('close', () => {
    clearInterval(look)
    rows.destroy()
  })
  rows.once('error', (fault) => out.destroy(fault))
  rows.pipe(out)
  return out
}
