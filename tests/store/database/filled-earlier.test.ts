import { pipeline } from 'node:stream/promises'
import pg from 'pg'
import { from as copyFrom, to as copyTo } from 'pg-copy-streams'
import { expect, test } from 'vitest'
import { copyTable } from '../../../src/backup/copy-table.ts'
import { tablesIn, textColumns } from '../../../src/backup/tables.ts'
import { enrolCast } from '../../../src/cli/demonstration/enrol.ts'
import { loadStories } from '../../../src/cli/demonstration/load.ts'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { installQueue } from '../../../src/jobs/install.ts'
import { verifyAudit } from '../../../src/store/audit/verify-audit.ts'
import { migrate, readMigrations } from '../../../src/store/database/migrate.ts'
import { testApp } from '../../support/app.ts'
import { emptyDatabase } from '../../support/database.ts'
import { describeSchema } from '../../support/describe-schema.ts'

/** A county that was filled under an earlier version, brought up to this one: nothing is lost, and nothing is changed. */

const { services, url } = await testApp()
/** Of a parcel with several systems an earlier version could hold one: those stories are no county of its time. */
const ofThen = readStories().filter(({ parcels }) => parcels.every(({ system }) => system === undefined))
await loadStories(services, await enrolCast(services.database), ofThen)
const all = await readMigrations()

async function connected(at: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: at })
  await client.connect()
  return client
}

/** Fills an earlier version's tables with what this version's hold in the same columns. */
async function fill(earlier: pg.Client, now: pg.Client) {
  const known = new Map((await tablesIn(now)).map((table) => [table.name, table]))
  const shared = (await tablesIn(earlier)).map((table) => {
    const columns = table.columns.filter((column) => known.get(table.name)?.columns.includes(column))
    return { ...table, columns }
  })
  for (const { name, columns } of shared) {
    await earlier.query(`alter table "${name}" disable trigger user`)
    if (columns.length === 0) continue
    const list = columns.map((column) => `"${column}"`).join()
    const out = now.query(copyTo(`copy (select ${list} from "${name}") to stdout`))
    await pipeline(out, earlier.query(copyFrom(`copy "${name}" (${list}) from stdin`)))
    await earlier.query(`alter table "${name}" enable trigger user`)
  }
  return shared.filter(({ columns }) => columns.length > 0)
}

/** The letters' version, the last before the audit, and the one before this. */
test.each([9, 12, all.length - 1])('from migration %i', async (count) => {
  const earlier = await emptyDatabase()
  await migrate(earlier, all.slice(0, count))
  const [old, now] = [await connected(earlier), await connected(url)]
  const shared = await fill(old, now)
  expect((await old.query('select count(*)::int as n from reconciliation')).rows[0].n).toBeGreaterThan(50)
  const ran = await migrate(earlier, all)
  expect(ran).toHaveLength(all.length - count)
  await installQueue(earlier)

  const collated = await textColumns(old)
  for (const table of shared)
    expect([table.name, await copyTable(old, table, collated)]).toEqual([
      table.name,
      await copyTable(now, table, collated),
    ])
  expect(await describeSchema(old)).toBe(await describeSchema(now))
  const { faults, heads } = await verifyAudit(old)
  expect(faults).toEqual([])
  if (count < 13) expect(heads.length).toBeGreaterThan(1)
  await Promise.all([old.end(), now.end()])
})
