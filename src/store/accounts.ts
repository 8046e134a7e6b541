import type { Tx } from './database/database.ts'

/** What the accounts among `ids` that the asker may see are called: what they are for, and whose they are. */
export async function accountNames(tx: Tx, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  if (ids.length === 0) return new Map()
  const rows = await tx
    .selectFrom('account as a')
    .innerJoin('organization as o', 'o.id', 'a.organization')
    .select(['a.id', 'a.label', 'o.name'])
    .where('a.id', 'in', [...new Set(ids)])
    .execute()
  return new Map(rows.map(({ id, label, name }) => [id, `${label}, ${name}`]))
}
