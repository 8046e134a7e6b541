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
  if (file === undefined) throw new BackupRefusal('Say what from: npm run restore -- FILE')
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
      `${Object.keys(tables).length} tables and ${originals.count} originals are as they were, by count and hash; ` +
      `the audit holds; ${jobs} jobs are to be done.`,
  )
  for (const hash of [...originals.missing, ...originals.damaged])
    console.error(`The original ${hash} was missing or damaged when the backup was made, and is not here.`)
  for (const { from, needed, there } of keysApart(settings))
    if (!there)
      console.log(
        `${from} is not here, and no backup holds it: put it there before the start. It ${needed}; the service would make a new one.`,
      )
}
