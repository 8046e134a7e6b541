/**
 * `npm run restore -- FILE`: puts a backup into an empty database and its originals into the data folder, and proves by
 * counts, hashes and the audit that all of it is there. `--broken` takes one whose audit did not hold when it was made, and
 * marks the database with what is wrong: it is said at every start, in the metrics and by `audit:verify`.
 */
import path from 'node:path'
import { parseArgs } from 'node:util'
import { BackupRefusal } from '../backup/backup-refusal.ts'
import { type Restored, restoreBackup } from '../backup/restore-backup.ts'
import { settingsOrExit } from '../config.ts'
import { reachServer } from '../store/database/server.ts'
import { explain } from './explain.ts'
import { keysApart } from './keys-apart.ts'

const settings = settingsOrExit()
try {
  const options = { broken: { type: 'boolean', default: false } } as const
  const { positionals, values } = parseArgs({ allowPositionals: true, options })
  const [file] = positionals
  if (file === undefined) throw new BackupRefusal('Name the backup: npm run restore -- FILE')
  const server = await reachServer({
    url: settings.DATABASE_URL,
    dataFolder: settings.ASFOUND_DATA,
    onTrouble: (message) => console.error(message),
  })
  const originals = path.join(settings.ASFOUND_DATA, 'originals')
  const target = { url: server.url, originals, asBroken: values.broken }
  tell(await restoreBackup(file, target).finally(() => server.release()))
} catch (fault) {
  explain(fault)
  process.exitCode = 1
}

function tell({ opening, manifest: { tables, jobs, originals }, broken }: Restored): void {
  const rows = Object.values(tables).reduce((sum, table) => sum + table.rows, 0)
  console.log(
    `Restored the backup of ${opening.at} (${opening.program}, PostgreSQL ${opening.server}): ${rows} rows of ` +
      `${Object.keys(tables).length} tables and ${originals.count} originals match by count and hash; ` +
      `${broken.length === 0 ? 'the audit chains are intact' : 'the audit chains are NOT intact, as at the time of the backup'}; ${jobs} jobs are waiting.`,
  )
  for (const fault of broken) console.error(`BROKEN  ${fault}`)
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
