import type { ClientBase } from 'pg'

export type KnownBreak = { readonly says: string; readonly since: string }

/** What was already wrong with the audit when this database was restored from a backup that said so. As the owner. */
export async function knownBreaks(client: ClientBase): Promise<readonly KnownBreak[]> {
  const { rows } = await client.query<KnownBreak>(
    `select says, to_char(noted_at at time zone 'UTC', 'YYYY-MM-DD') as since from audit_break order by number`,
  )
  return rows
}
