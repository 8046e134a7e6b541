import type { ClientBase } from 'pg'
import { compareDerived } from './compare-derived.ts'
import { compareRecords } from './compare-records.ts'
import { followChain } from './follow-chain.ts'
import type { Head } from './head.ts'
import { chainsIn, readChain } from './read-entries.ts'
import { WATCHED } from './watched.ts'

export type AuditReport = {
  /** Where each chain ends; where it has a fault, the last entry before that. */
  readonly heads: readonly Head[]
  /** In words, each pointing at an entry, a record or a table. None: everything is as the audit says. */
  readonly faults: readonly string[]
}

/**
 * Follows every chain, compares every watched record with what was last said of it, and looks whether the watch is kept
 * at all. Call it as the owner of the tables, in a transaction with one snapshot (`repeatable read`).
 */
export async function verifyAudit(client: ClientBase, known: readonly Head[] = []): Promise<AuditReport> {
  const counties = new Set([...(await chainsIn(client)), ...known.map(({ county }) => county)])
  const heads: Head[] = []
  const faults = [...(await unwatched(client))]
  for (const county of counties) {
    const followed = await followChain(county, readChain(client, county), known)
    heads.push(followed.head)
    if (followed.fault) faults.push(followed.fault)
  }
  for (const table of WATCHED) faults.push(...(await compareRecords(client, table)))
  faults.push(...(await compareDerived(client)))
  return { heads, faults }
}

async function unwatched(client: ClientBase): Promise<readonly string[]> {
  const { rows } = await client.query<{ kind: string }>('select kind from watched_table where switched_on')
  const on = new Set(rows.map(({ kind }) => kind))
  return WATCHED.filter((table) => !on.has(table)).map(
    (table) => `${table} is not watched: its trigger append_audit is gone or switched off`,
  )
}
