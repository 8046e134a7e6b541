import { type Caller, type FoundCaller, findToken } from '../../store/access/find-token.ts'
import { findSession } from '../../store/access/sessions.ts'
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
  /** Who is signed in by a browser's session; undefined when it is unknown or over. */
  readonly findSession: (secret: string) => Promise<Caller | undefined>
  /** A session that was ended here is over here at once. */
  readonly forget: (secret: string) => void
}

/** Finds who a token belongs to, asking the database once in a while for each. */
export function callerFinder(database: Database, clock: () => Date): CallerFinder {
  const remembered = new Map<string, Remembered>()

  const fresh = (key: string): Caller | undefined => {
    const entry = remembered.get(key)
    return entry && entry.until > clock().getTime() ? entry.caller : undefined
  }

  /** A token and a session are told apart by their keys: neither may serve as the other. */
  const finding =
    (
      kind: 'token' | 'session',
      ask: (database: Database, hash: Buffer) => Promise<FoundCaller | undefined>,
    ) =>
    async (secret: string): Promise<Caller | undefined> => {
      const hash = tokenHash(secret)
      const key = keyOf(kind, hash)
      const known = fresh(key)
      if (known) return known
      const found = await ask(database, hash)
      // Unknown secrets are not remembered: a guesser could push the known ones out.
      if (!found) return undefined
      if (remembered.size >= REMEMBER_MOST) remembered.clear()
      const until = clock().getTime() + REMEMBER_MS
      remembered.set(key, {
        caller: found.caller,
        until: Math.min(until, found.expiresAt?.getTime() ?? Number.POSITIVE_INFINITY),
      })
      return found.caller
    }

  return {
    known: (token) => fresh(keyOf('token', tokenHash(token))),
    find: finding('token', findToken),
    findSession: finding('session', findSession),
    forget: (secret) => void remembered.delete(keyOf('session', tokenHash(secret))),
  }
}

const keyOf = (kind: 'token' | 'session', hash: Buffer): string => `${kind} ${hash.toString('base64')}`
