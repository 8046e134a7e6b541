import type { PublishedKey } from '../letters/signing/signer.ts'
import type { Tx } from './database/database.ts'

/** A key that letters were signed with, its public half. */
export type SigningKey = {
  readonly key: PublishedKey
  readonly firstUsedAt: Date
  /** Signs no more since then; null while it may. */
  readonly retiredAt: Date | null
}

/** Every key there ever was, newest first. */
export async function signingKeys(tx: Tx): Promise<readonly SigningKey[]> {
  const rows = await tx
    .selectFrom('signing_key')
    .selectAll()
    .orderBy('first_used_at', 'desc')
    .orderBy('kid')
    .execute()
  return rows.map(({ public_jwk, first_used_at, retired_at }) => ({
    key: public_jwk as PublishedKey,
    firstUsedAt: first_used_at,
    retiredAt: retired_at,
  }))
}

/** Whether that key is known and may sign. */
export async function maySign(tx: Tx, kid: string): Promise<boolean> {
  const row = await tx
    .selectFrom('signing_key')
    .select('kid')
    .where('kid', '=', kid)
    .where('retired_at', 'is', null)
    .executeTakeFirst()
  return row !== undefined
}

/** As the owner: makes a key known, so that it is published before it has signed anything. */
export async function registerSigningKey(tx: Tx, key: PublishedKey, at: Date): Promise<void> {
  await tx
    .insertInto('signing_key')
    .values({ kid: key.kid, public_jwk: JSON.stringify(key), first_used_at: at })
    .onConflict((conflict) => conflict.column('kid').doNothing())
    .execute()
}

/** As the owner: it signs no more from now on. False where there is no such key, or it was retired before. */
export async function retireSigningKey(tx: Tx, kid: string, at: Date): Promise<boolean> {
  const { numUpdatedRows } = await tx
    .updateTable('signing_key')
    .set({ retired_at: at })
    .where('kid', '=', kid)
    .where('retired_at', 'is', null)
    .executeTakeFirst()
  return numUpdatedRows > 0n
}
