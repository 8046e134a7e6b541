import type { ClientBase } from 'pg'

/** What is known by a hash that watched records name, and is not what that hash is of; in words. */
export async function compareDerived(client: ClientBase): Promise<readonly string[]> {
  const { rows } = await client.query<{ hash: string }>(
    `select hash from rule_book where encode(sha256(convert_to(packs, 'UTF8')), 'hex') <> hash order by hash limit 20`,
  )
  return rows.map(
    ({ hash }) => `rule_book ${hash} holds other rules than it is named by: it was changed past the audit`,
  )
}
