import { sql } from 'kysely'
import type { Role } from '../database/actor.ts'
import type { Database } from '../database/database.ts'
import { withoutCounty } from '../database/transact.ts'

/** Whoever holds a token. */
export type Caller = {
  readonly token: string
  readonly account: string
  readonly organisation: string
  readonly role: Role
  /** The counties the token is good for. */
  readonly counties: readonly string[]
}

export type FoundToken = { readonly caller: Caller; readonly expiresAt: Date | null }

type Row = Caller & { readonly expires_at: Date | null }

/** Undefined when no token has that hash, it is expired or withdrawn, or its account is suspended. */
export const findToken = (database: Database, hash: Buffer): Promise<FoundToken | undefined> =>
  withoutCounty(database, async (tx) => {
    const { rows } = await sql<Row>`select * from find_access_token(${hash})`.execute(tx)
    const [row] = rows
    if (!row) return undefined
    const { expires_at, ...caller } = row
    return { caller, expiresAt: expires_at }
  })
