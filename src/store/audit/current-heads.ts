import { sql } from 'kysely'
import type { Tx } from '../database/database.ts'
import { chainName } from './entry.ts'
import type { Head } from './head.ts'

/** As the owner. */

/** Where each chain ends, by its key: a handful of rows, however long the chains are. */
export async function currentHeads(tx: Tx): Promise<readonly Head[]> {
  const { rows } = await sql<Head>`
    select chain.id as county, ends.number, ends.hash
    from (select id from county union all select '*') chain
    cross join lateral (
      select number, hash from audit where audit.county = chain.id order by number desc limit 1) ends
    order by 1`.execute(tx)
  return rows
}

/** What of heads that were noted is not there any more, or is another, in words: a chain that was cut or written anew. */
export async function notAsNoted(tx: Tx, noted: readonly Head[]): Promise<readonly string[]> {
  const faults: string[] = []
  for (const { county, number, hash } of noted) {
    if (number === 0) continue
    const { rows } = await sql<{ hash: string }>`
      select hash from audit where county = ${county} and number = ${number}`.execute(tx)
    const [now] = rows
    if (now?.hash === hash) continue
    const what = now ? 'is another than was noted' : 'was noted and is not there'
    faults.push(`entry ${number} of ${chainName(county)} ${what}`)
  }
  return faults
}

export async function noteNoting(tx: Tx, faults: number, at: Date): Promise<void> {
  const row = { noted_at: at, faults }
  await tx
    .insertInto('audit_noting')
    .values({ one: true, ...row })
    .onConflict((conflict) => conflict.column('one').doUpdateSet(row))
    .execute()
}
