import type { Tx } from './database/database.ts'

/** Names of the organizations among `ids` that the asker may see. */
export async function organizationNames(
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  if (ids.length === 0) return new Map()
  const rows = await tx
    .selectFrom('organization')
    .select(['id', 'name'])
    .where('id', 'in', [...new Set(ids)])
    .execute()
  return new Map(rows.map(({ id, name }) => [id, name]))
}
