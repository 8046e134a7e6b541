import type { FastifyInstance } from 'fastify'
import { networkOf } from '../access/network-of.ts'
import { problem } from '../problem.ts'

declare module 'fastify' {
  interface FastifyRequest {
    /** For what is open to anyone who knows something that can't be guessed. */
    readonly guesses: Guesses
  }
}

export type Guesses = {
  /** Throws where this address has guessed too often of late, whether or not this time it would be right. */
  readonly refuseGuesser: () => void
  /** Counts a question for something that is not there. */
  readonly noteMiss: () => void
}

/** Wrong answers a minute from one address. People mistype; whoever holds the real thing is not counted at all. */
export const MISSES_PER_MINUTE = 20
/**
 * Wrong answers a minute from everywhere at once, from which on one alone is too many: whoever guesses from a thousand
 * addresses is slowed like one who guesses from one, and whoever holds the real thing still comes through.
 */
export const MISSES_IN_ALL = 600
const WINDOW_MS = 60_000
const REMEMBER_MOST = 20_000

type Count = { misses: number; readonly until: number }

/** Lets nobody try secrets out: an address that asked for too much that is not there waits for the minute to end. */
export function limitGuesses(app: FastifyInstance, clock: () => Date): void {
  const counts = new Map<string, Count>()
  let all: Count = { misses: 0, until: 0 }
  const running = (count: Count | undefined): Count | undefined => {
    const left = count ? count.until - clock().getTime() : 0
    // More than it ever was: the clock was set back, and nobody waits for hours because of that.
    return left > 0 && left <= WINDOW_MS ? count : undefined
  }
  const current = (address: string): Count | undefined => running(counts.get(address))
  const begun = (): Count => ({ misses: 0, until: clock().getTime() + WINDOW_MS })
  const allowed = (): number =>
    (running(all)?.misses ?? 0) < MISSES_IN_ALL ? MISSES_PER_MINUTE : Math.min(1, MISSES_PER_MINUTE)
  app.decorateRequest('guesses', {
    getter() {
      const address = networkOf(this.ip)
      return {
        refuseGuesser: () => {
          const count = current(address)
          if (!count || count.misses < allowed()) return
          const seconds = Math.ceil((count.until - clock().getTime()) / 1_000)
          throw problem('too-many-requests', { headers: { 'retry-after': String(seconds) } })
        },
        noteMiss: () => {
          const count = current(address) ?? begun()
          count.misses++
          all = running(all) ?? begun()
          all.misses++
          counts.delete(address)
          // The address that was quiet longest makes room.
          if (counts.size >= REMEMBER_MOST) counts.delete(counts.keys().next().value ?? '')
          counts.set(address, count)
        },
      }
    },
  })
}
