import { type Caller, findToken } from '../../store/access/find-token.ts'
import { tokenHash } from '../../store/access/token.ts'
import type { Database } from '../../store/database/database.ts'

type Remembered = { readonly caller: Caller; readonly until: number }

/** A withdrawn token goes on working for at most this long in a process that knew it. */
const REMEMBER_MS = 5_000
const REMEMBER_MOST = 10_000

export type CallerFinder = {
  /** Undefined when the token is unknown, expired, withdrawn, or its account suspended. */
  readonly find: (token: string) => Promise<Caller | undefined>
  /** The same without asking the database: only what was found a moment ago. */
  readonly known: (token: string) => Caller | undefined
}

/** Finds who a token belongs to, asking the database once in a while for each. */
export function callerFinder(database: Database, clock: () => Date): CallerFinder {
  const remembered = new Map<string, Remembered>()

  const fresh = (key: string): Caller | undefined => {
    const entry = remembered.get(key)
    return entry && entry.until > clock().getTime() ? entry.caller : undefined
  }

  return {
    known: (token) => fresh(tokenHash(token).toString('base64')),
    find: async (token) => {
      const hash = tokenHash(token)
      const key = hash.toString('base64')
      const known = fresh(key)
      if (known) return known
      const found = await findToken(database, hash)
      // Unknown tokens are not remembered: a guesser could push the known ones out.
      if (!found) return undefined
      if (remembered.size >= REMEMBER_MOST) remembered.clear()
      const until = clock().getTime() + REMEMBER_MS
      remembered.set(key, {
        caller: found.caller,
        until: Math.min(until, found.expiresAt?.getTime() ?? Number.POSITIVE_INFINITY),
      })
      return found.caller
    },
  }
}
