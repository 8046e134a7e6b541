import { sql } from 'kysely'
import type { SessionStage } from '../database/access-tables.ts'
import type { Role } from '../database/actor.ts'
import type { Database, Tx } from '../database/database.ts'
import { withoutCounty } from '../database/transact.ts'
import type { FoundCaller } from './find-token.ts'

type NewSession = {
  readonly hash: Buffer
  readonly account: string
  readonly stage: SessionStage
  readonly browser: string | null
  readonly begunAt: Date
  readonly endsAt: Date
  /** Ends earlier when it was not used for so long. */
  readonly idleMinutes: number
}

/** At the door. Sweeps away what ended a month ago. */
export async function beginSession(tx: Tx, begun: NewSession): Promise<void> {
  const { hash, account, stage, browser, begunAt, endsAt, idleMinutes } = begun
  const monthAgo = new Date(begunAt.getTime() - 30 * 86_400_000)
  await tx.deleteFrom('session').where('ends_at', '<', monthAgo).execute()
  await tx
    .insertInto('session')
    .values({
      hash,
      account,
      stage,
      browser,
      idle: `${idleMinutes} minutes`,
      begun_at: begunAt,
      ends_at: endsAt,
    })
    .execute()
}

/** When a session was begun; undefined where there is none of that id. At the door. */
export async function sessionBegun(tx: Tx, id: string): Promise<Date | undefined> {
  const row = await tx
    .selectFrom('session')
    .select('begun_at as begunAt')
    .where('id', '=', id)
    .executeTakeFirst()
  return row?.begunAt
}

export type OpenSession = FoundCaller & { readonly stage: SessionStage }

/** Who came in by that session, how far; undefined where it is unknown or over, or its account suspended. */
export const findOpenSession = (database: Database, hash: Buffer): Promise<OpenSession | undefined> =>
  withoutCounty(database, async (tx) => {
    type Row = {
      readonly session: string
      readonly stage: SessionStage
      readonly account: string
      readonly organization: string
      readonly role: Role
      readonly administers: boolean
      readonly counties: readonly string[]
      readonly ends_at: Date
    }
    const { rows } = await sql<Row>`select * from find_session(${hash})`.execute(tx)
    const [row] = rows
    if (!row) return undefined
    const { session, stage, ends_at, ...who } = row
    const caller = { ...who, token: session, writes: who.counties, manages: true, bySession: true }
    return { caller, stage, expiresAt: ends_at }
  })

/** The same for sessions that went all the way: who still owes a code is nobody yet. */
export async function findSession(database: Database, hash: Buffer): Promise<FoundCaller | undefined> {
  const found = await findOpenSession(database, hash)
  return found?.stage === 'full' ? found : undefined
}

export const endSession = (database: Database, hash: Buffer): Promise<void> =>
  withoutCounty(database, async (tx) => void (await sql`select end_session(${hash})`.execute(tx)))

export type SessionListed = {
  readonly id: string
  readonly browser: string | null
  readonly begunAt: Date
  readonly lastUsedAt: Date
  readonly endsAt: Date
}

/** The account's sessions that are not over, the latest used first. */
export async function openSessions(tx: Tx, account: string): Promise<readonly SessionListed[]> {
  return tx
    .selectFrom('session')
    .select(['id', 'browser', 'begun_at as begunAt', 'last_used_at as lastUsedAt', 'ends_at as endsAt'])
    .where('account', '=', account)
    .where('stage', '=', 'full')
    .where('ends_at', '>', sql<Date>`now()`)
    .where(sql<boolean>`last_used_at > now() - idle`)
    .orderBy('last_used_at', 'desc')
    .execute()
}

/** Ends one of the account's sessions; false where it has no such session that goes on. */
export async function endSessionById(tx: Tx, account: string, id: string): Promise<boolean> {
  const { numUpdatedRows } = await tx
    .updateTable('session')
    .set({ ends_at: sql`now()` })
    .where('id', '=', id)
    .where('account', '=', account)
    .where('ends_at', '>', sql<Date>`now()`)
    .executeTakeFirst()
  return numUpdatedRows > 0n
}

/** Ends all sessions of an account, but for one. */
export async function endSessionsOf(tx: Tx, account: string, but: string | null = null): Promise<void> {
  let ending = tx
    .updateTable('session')
    .set({ ends_at: sql`least(ends_at, now())` })
    .where('account', '=', account)
  if (but !== null) ending = ending.where('id', '!=', but)
  await ending.execute()
}
