import { migrate, readMigrations } from '../store/database/migrate.ts'
import { installQueue } from './install.ts'

/** Brings a database up to this version: tables, then the queue beside them. Returns the migrations that ran. */
export async function prepareDatabase(url: string): Promise<readonly string[]> {
  const ran = await migrate(url, await readMigrations())
  await installQueue(url)
  return ran
}
