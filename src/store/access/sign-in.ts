import { sql } from 'kysely'
import type { Role } from '../database/actor.ts'
import type { Database, Tx } from '../database/database.ts'
import { withoutCounty } from '../database/transact.ts'
import type { Caller } from './find-token.ts'

type KeptSignIn = {
  readonly account: string
  readonly passwordHash: string
  /** Nobody may try this name again before then. */
  readonly waitUntil: Date | null
}

/** What a password for that name is checked against; undefined where no account signs in so, or it is suspended. */
export const findSignIn = (database: Database, name: string): Promise<KeptSignIn | undefined> =>
  withoutCounty(database, async (tx) => {
    const { rows } = await sql<KeptSignIn>`
      select account, password_hash as "passwordHash", wait_until as "waitUntil"
      from find_sign_in(${name})`.execute(tx)
    return rows[0]
  })

export const noteWrongPassword = (database: Database, name: string): Promise<void> =>
  withoutCounty(database, async (tx) => void (await sql`select note_wrong_password(${name})`.execute(tx)))

export const beginSession = (database: Database, account: string, hash: Buffer, until: Date): Promise<void> =>
  withoutCounty(database, async (tx) => {
    await sql`select begin_session(${account}, ${hash}, ${until})`.execute(tx)
  })

export const endSession = (database: Database, hash: Buffer): Promise<void> =>
  withoutCounty(database, async (tx) => void (await sql`select end_session(${hash})`.execute(tx)))

/** Who is signed in by that session; undefined where it is unknown or over, or its account suspended. */
export const findSession = (
  database: Database,
  hash: Buffer,
): Promise<{ readonly caller: Caller; readonly expiresAt: Date } | undefined> =>
  withoutCounty(database, async (tx) => {
    type Row = {
      readonly account: string
      readonly organisation: string
      readonly role: Role
      readonly counties: readonly string[]
      readonly ends_at: Date
    }
    const { rows } = await sql<Row>`select * from find_session(${hash})`.execute(tx)
    const [row] = rows
    if (!row) return undefined
    const { ends_at, ...who } = row
    return { caller: { ...who, token: hash.toString('base64url') }, expiresAt: ends_at }
  })

/** Gives an account a name to sign in by, or another name, password or counties. The owner's: inside `administer`. */
export async function keepSignIn(
  tx: Tx,
  account: string,
  { name, passwordHash, counties }: { name: string; passwordHash: string; counties: readonly string[] },
): Promise<void> {
  await sql`
    insert into sign_in (account, name, password_hash, counties)
    values (${account}, ${name}, ${passwordHash}, ${[...counties]})
    on conflict (account) do update set name = excluded.name, password_hash = excluded.password_hash,
      counties = excluded.counties, misses = 0, wait_until = null, changed_at = now()`.execute(tx)
  // Whoever had the old password is out.
  await sql`update session set ends_at = least(ends_at, now()) where account = ${account}`.execute(tx)
}
