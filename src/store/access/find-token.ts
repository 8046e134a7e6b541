import { sql } from 'kysely'
import type { Role } from '../database/actor.ts'
import type { Database } from '../database/database.ts'
import { withoutCounty } from '../database/transact.ts'

/** Whoever holds a token, or is signed in by a session. */
export type Caller = {
  /** The id of the token or session: nothing that anybody could come in by. */
  readonly token: string
  readonly account: string
  readonly organization: string
  readonly role: Role
  /** Whether the account looks after its organization's people and tokens. */
  readonly administers: boolean
  /** Whether what it came in by is good for managing people, tokens and sessions. */
  readonly manages: boolean
  /** The counties it may read in: those it was made for in which its organization is still admitted. */
  readonly counties: readonly string[]
  /** Where among these it may write too. */
  readonly writes: readonly string[]
  readonly bySession: boolean
}

export type FoundCaller = { readonly caller: Caller; readonly expiresAt: Date | null }

type Row = Omit<Caller, 'bySession'> & { readonly expires_at: Date | null }

/** Undefined when no token has that hash, it is expired or withdrawn, or its account is suspended. */
export const findToken = (database: Database, hash: Buffer): Promise<FoundCaller | undefined> =>
  withoutCounty(database, async (tx) => {
    const { rows } = await sql<Row>`select * from find_access_token(${hash})`.execute(tx)
    const [row] = rows
    if (!row) return undefined
    const { expires_at, ...caller } = row
    return { caller: { ...caller, bySession: false }, expiresAt: expires_at }
  })
