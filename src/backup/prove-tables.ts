import { isDeepStrictEqual } from 'node:util'
import type { ClientBase } from 'pg'
import { verifyAudit } from '../store/audit/verify-audit.ts'
import { BackupRefusal } from './backup-refusal.ts'
import { copyTable } from './copy-table.ts'
import type { Manifest, Opening } from './manifest.ts'
import { textColumns } from './tables.ts'

/**
 * Reads every table back and compares it with what the backup says of it; then the audit, record by record. Returns what
 * is wrong with the audit, none where it holds; `asBroken`: it need not, in so far as it was so when the backup was made.
 */
export async function proveTables(
  client: ClientBase,
  { tables }: Opening,
  told: Manifest,
  asBroken: boolean,
): Promise<readonly string[]> {
  const collated = await textColumns(client)
  const wrong: string[] = []
  for (const table of tables) {
    const proof = await copyTable(client, table, collated)
    if (!isDeepStrictEqual(proof, told.tables[table.name])) wrong.push(table.name)
  }
  if (wrong.length > 0)
    throw new BackupRefusal(`What was restored is not what was backed up: ${wrong.join(', ')}`)
  const { faults } = await verifyAudit(client, told.heads)
  // A backup that did not look is taken at its word that it is as it was: its tables fit.
  const fresh = faults.filter((it) => told.broken !== undefined && !told.broken.includes(it))
  if (fresh.length > 0) throw new BackupRefusal(`The audit does not hold: ${fresh.join('; ')}`)
  if (faults.length > 0 && !asBroken)
    throw new BackupRefusal(
      `The audit did not hold when this backup was made: ${faults.join('; ')}. An older backup may be sound. ` +
        'To restore this one anyway, marked as broken for good: npm run restore -- FILE --broken',
    )
  return faults
}
