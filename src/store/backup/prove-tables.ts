import { isDeepStrictEqual } from 'node:util'
import type { ClientBase } from 'pg'
import { verifyAudit } from '../audit/verify-audit.ts'
import { BackupRefusal } from './backup-refusal.ts'
import { copyTable } from './copy-table.ts'
import type { Manifest, Opening } from './manifest.ts'
import { textColumns } from './tables.ts'

/** Reads every table back and compares it with what the backup says of it; then the audit, record by record. */
export async function proveTables(client: ClientBase, { tables }: Opening, told: Manifest): Promise<void> {
  const collated = await textColumns(client)
  const wrong: string[] = []
  for (const table of tables) {
    const proof = await copyTable(client, table, collated)
    if (!isDeepStrictEqual(proof, told.tables[table.name])) wrong.push(table.name)
  }
  if (wrong.length > 0)
    throw new BackupRefusal(`What was restored is not what was backed up: ${wrong.join(', ')}`)
  const { faults } = await verifyAudit(client, told.heads)
  if (faults.length > 0) throw new BackupRefusal(`The audit does not hold: ${faults.join('; ')}`)
}
