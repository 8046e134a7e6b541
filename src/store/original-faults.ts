import { sql } from 'kysely'
import type { Tx } from './database/database.ts'

/** As the owner, over all counties. */

/** The next hashes of originals that some record names, after `after`; none behind the last. */
export async function originalsNamedAfter(tx: Tx, after: string, most: number): Promise<readonly string[]> {
  const { rows } = await sql<{ hash: string }>`
    select hash from (
      select content_hash as hash from document
      union select content_hash from import
      union select content_hash from photo
      union select shown_hash from photo
      union select small_hash from photo
      union select printed_hash from photo
      union select pdf_sha256 from letter
    ) named where hash > ${after} order by hash limit ${most}`.execute(tx)
  return rows.map(({ hash }) => hash)
}

/** Notes how an original was found; one that is whole is no fault any more. */
export async function noteOriginal(
  tx: Tx,
  hash: string,
  state: 'whole' | 'damaged' | 'missing',
  at: Date,
): Promise<void> {
  if (state === 'whole') {
    await tx.deleteFrom('original_fault').where('hash', '=', hash).execute()
    return
  }
  await tx
    .insertInto('original_fault')
    .values({ hash, state, found_at: at })
    .onConflict((conflict) => conflict.column('hash').doUpdateSet({ state }))
    .execute()
}

export const originalsAtFault = (tx: Tx) =>
  tx.selectFrom('original_fault').select(['hash', 'state']).orderBy('hash').execute()

/** When all were last looked through, and by that nobody else begins the next round; undefined before the first. */
export async function lastRound(tx: Tx): Promise<Date | undefined> {
  const row = await tx.selectFrom('original_round').select('ended_at').executeTakeFirst()
  return row?.ended_at
}

export async function endRound(tx: Tx, looked: number, at: Date): Promise<void> {
  const row = { ended_at: at, looked }
  await tx
    .insertInto('original_round')
    .values({ one: true, ...row })
    .onConflict((conflict) => conflict.column('one').doUpdateSet(row))
    .execute()
}
