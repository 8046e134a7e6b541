/**
 * `npm run county`: how a county's papers are read. Its parcel numbers, by an example of each way of writing them that is in
 * use, and whether names of owners and installers are kept with what is read.
 */
import { parseArgs } from 'node:util'
import { settingsOrExit } from '../config.ts'
import { prepareDatabase } from '../jobs/prepare-database.ts'
import { changeCounty } from '../operations/counties/change-county.ts'
import { openDatabase } from '../store/database/database.ts'
import { reachServer } from '../store/database/server.ts'
import { explain } from './explain.ts'

const USAGE = `npm run county -- --county quillback
  --parcels '07-0412-0031, R-114-22A'   (an example of each way of writing them, the main one first)
  --names keep | leave-out              (names of owners and installers; left out unless kept)`

const option = { type: 'string' } as const
const { values } = parseArgs({ options: { county: option, parcels: option, names: option } })
const { county, parcels, names } = values
const isNamed = names === undefined || names === 'keep' || names === 'leave-out'
if (!county || (parcels === undefined && names === undefined) || !isNamed) {
  console.error(USAGE)
  process.exit(1)
}

const settings = settingsOrExit()
try {
  const server = await reachServer({
    url: settings.DATABASE_URL,
    dataFolder: settings.ASFOUND_DATA,
    onTrouble: (message) => console.error(message),
  })
  await prepareDatabase(server.url)
  const database = openDatabase({ url: server.url, maxConnections: 2, onTrouble: (fault) => explain(fault) })
  const changed = await changeCounty(database, {
    county,
    parcelExamples: parcels?.split(',').map((example) => example.trim()),
    keepsNames: names === undefined ? undefined : names === 'keep',
  })
  if (changed.ok) console.log('Done. Papers that are read from now on are read so.')
  else {
    console.error(changed.error)
    process.exitCode = 1
  }
  await database.close()
  server.release()
} catch (fault) {
  explain(fault)
  process.exitCode = 1
}
