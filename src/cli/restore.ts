/**
 * `npm run restore -- FILE`: puts a backup into an empty database and its originals into the data folder, and proves by
 * counts, hashes and the audit that all of it is there.
 */
import path from 'node:path'
import { parseArgs } from 'node:util'
import { settingsOrExit } from '../config.ts'
import { BackupRefusal } from '../store/backup/backup-refusal.ts'
import { type Restored, restoreBackup } from '../store/backup/restore-backup.ts'
import { reachServer } from '../store/database/server.ts'
import { explain } from './explain.ts'
import { keysApart } from './keys-apart.ts'

const settings = settingsOrExit()
try {
  const [file] = parseArgs({ allowPositionals: true }).positionals
  if (file === undefined) throw new BackupRefusal('Name the backup: npm run restore -- FILE')
  const server = await reachServer({
    url: settings.DATABASE_URL,
    dataFolder: settings.ASFOUND_DATA,
    onTrouble: (message) => console.error(message),
  })
  const originals = path.join(settings.ASFOUND_DATA, 'originals')
  tell(await restoreBackup(file, { url: server.url, originals }).finally(() => server.release()))
} catch (fault) {
  explain(fault)
  process.exitCode = 1
}

function tell({ opening, manifest: { tables, jobs, originals } }: Restored): void {
  const rows = Object.values(tables).reduce((sum, table) => sum + table.rows, 0)
  console.log(
    `Restored the backup of ${opening.at} (${opening.program}, PostgreSQL ${opening.server}): ${rows} rows of ` +
      `${Object.keys(tables).length} tables and ${originals.count} originals match by count and hash; ` +
      `the audit chains are intact; ${jobs} jobs are waiting.`,
  )
  for (const hash of [...originals.missing, ...originals.damaged])
    console.error(
      `The original ${hash} was missing or damaged at the time of the backup, and is not restored.`,
    )
  for (const { from, needed, there } of keysApart(settings))
    if (!there)
      console.log(
        `${from} is missing and is in no backup. It ${needed}. Put it back before you start the service, which would make a new one.`,
      )
}
