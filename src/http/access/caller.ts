import { type Caller, type FoundCaller, findToken } from '../../store/access/find-token.ts'
import { findSession } from '../../store/access/sessions.ts'
import { tokenHash } from '../../store/access/token.ts'
import type { AccessWatch } from '../../store/access/watch-access.ts'
import type { Database } from '../../store/database/database.ts'

type Kind = 'token' | 'session'
type Remembered = { readonly caller: Caller; readonly until: number }

/**
 * Whoever was found a moment ago is not asked for again, as long as every change to who may come in is heard of: a
 * withdrawal is known here as soon as it is committed. Should the connection that tells of it die unnoticed, a
 * withdrawn token goes on for this long and no longer.
 */
const REMEMBER_MS = 5_000
const REMEMBER_MOST = 10_000

export type CallerFinder = {
  /** Undefined when the token is unknown, expired, withdrawn, or its account suspended. */
  readonly find: (token: string) => Promise<Caller | undefined>
  /** The same of a browser's session. */
  readonly findSession: (secret: string) => Promise<Caller | undefined>
  /** Without asking the database: only who was found a moment ago. For counting requests, never for letting in. */
  readonly known: (kind: Kind, secret: string) => Caller | undefined
}

/** Finds who a token or a session belongs to. Without a watch the database is asked each time. */
export function callerFinder(database: Database, clock: () => Date, watch?: AccessWatch): CallerFinder {
  const remembered = new Map<string, Remembered>()
  let changes = 0
  watch?.onChange(() => {
    changes++
    remembered.clear()
  })

  const fresh = (key: string): Caller | undefined => {
    const entry = remembered.get(key)
    const left = entry ? entry.until - clock().getTime() : 0
    // More than it ever was: the clock was set back.
    return left > 0 && left <= REMEMBER_MS ? entry?.caller : undefined
  }

  /** A token and a session are told apart by their keys: neither may serve as the other. */
  const finding =
    (kind: Kind, ask: (database: Database, hash: Buffer) => Promise<FoundCaller | undefined>) =>
    async (secret: string): Promise<Caller | undefined> => {
      const hash = tokenHash(secret)
      const key = keyOf(kind, hash)
      const known = watch?.hears() ? fresh(key) : undefined
      if (known) return known
      const before = changes
      const found = await ask(database, hash)
      // Unknown secrets are not remembered: a guesser could push the known ones out. Nor is what may be old already.
      if (!found) {
        remembered.delete(key)
        return undefined
      }
      if (changes !== before) return found.caller
      if (remembered.size >= REMEMBER_MOST) remembered.clear()
      const until = clock().getTime() + REMEMBER_MS
      remembered.set(key, {
        caller: found.caller,
        until: Math.min(until, found.expiresAt?.getTime() ?? Number.POSITIVE_INFINITY),
      })
      return found.caller
    }

  return {
    find: finding('token', findToken),
    findSession: finding('session', findSession),
    known: (kind, secret) => fresh(keyOf(kind, tokenHash(secret))),
  }
}

const keyOf = (kind: Kind, hash: Buffer): string => `${kind} ${hash.toString('base64')}`
