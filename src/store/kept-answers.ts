import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

/** Whose key: two accounts may use the same one. */
export type AnswerKey = { readonly county: string; readonly account: string; readonly key: string }

export type KeptAnswer = {
  /** Of the request that it answers. */
  readonly hash: string
  readonly status: number
  readonly headers: Readonly<Record<string, string>>
  readonly body: string
}

/** Until the transaction ends nobody else answers this key. False where somebody else is at it. */
export async function holdKey(tx: Tx, { county, account, key }: AnswerKey): Promise<boolean> {
  const scope = `${county} ${account} ${key}`
  const { rows } = await sql<{ mine: boolean }>`
    select pg_try_advisory_xact_lock(hashtextextended(${scope}, 0)) as mine`.execute(tx)
  return rows[0]?.mine ?? false
}

export async function findAnswer(
  tx: Tx,
  { county, account, key }: AnswerKey,
): Promise<KeptAnswer | undefined> {
  return tx
    .selectFrom('idempotency_key')
    .select(['request_hash as hash', 'status', 'headers', 'body'])
    .where('county', '=', county)
    .where('account', '=', account)
    .where('key', '=', key)
    .executeTakeFirst()
}

export async function keepAnswer(tx: Tx, of: AnswerKey, answer: KeptAnswer): Promise<void> {
  const { hash, status, headers, body } = answer
  await tx
    .insertInto('idempotency_key')
    .values({ ...of, request_hash: hash, status, headers: JSON.stringify(headers), body })
    .execute()
}

/**
 * Forgets answers older than so many days, at most so many at once, in all counties: as the owner. Returns how many it
 * were. The database gave them their age and counts it: a clock that jumps here forgets nothing too soon.
 */
export async function forgetAnswers(tx: Tx, days: number, most: number): Promise<number> {
  const { numAffectedRows } = await sql`
    delete from idempotency_key k using (
      select county, account, key from idempotency_key where answered_at < now() - make_interval(days => ${days})
      order by answered_at limit ${most} for update skip locked
    ) old where (k.county, k.account, k.key) = (old.county, old.account, old.key)`.execute(tx)
  return Number(numAffectedRows ?? 0)
}
