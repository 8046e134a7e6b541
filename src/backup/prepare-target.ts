import type { ClientBase } from 'pg'
import { installQueue } from '../jobs/install.ts'
import { migrate, readMigrations } from '../store/database/migrate.ts'
import { BackupRefusal } from './backup-refusal.ts'
import type { Opening } from './manifest.ts'
import { tablesIn } from './tables.ts'

/** Refuses a database that holds anything: a restore adds to nothing and replaces nothing. */
export async function refuseUnlessEmpty(client: ClientBase): Promise<void> {
  for (const { name } of await tablesIn(client)) {
    const { rows } = await client.query(`select 1 from "${name}" limit 1`)
    if (rows.length > 0) {
      throw new BackupRefusal(
        `The database is not empty: ${name} holds something. Restore into a database of its own (DATABASE_URL), or ` +
          'into a data folder that was never used (ASFOUND_DATA).',
      )
    }
  }
}

/** Brings an empty database to the state that the backup was made in, which may be an older one; with the queue beside it. */
export async function prepareTarget(url: string, { migrations, program }: Opening): Promise<void> {
  const ours = await readMigrations()
  if (migrations.length > ours.length) {
    throw new BackupRefusal(
      `The backup was made by a newer version (${program}, up to ${migrations.at(-1)?.name}); this one ends with ` +
        `${ours.at(-1)?.name}. Restore it with that version.`,
    )
  }
  for (const { number, name, checksum } of migrations) {
    if (ours[number - 1]?.checksum === checksum) continue
    throw new BackupRefusal(
      `The backup's migration ${name} is another than this version's ${ours[number - 1]?.name}: they are not of one line.`,
    )
  }
  await migrate(url, ours.slice(0, migrations.length))
  await installQueue(url)
}
