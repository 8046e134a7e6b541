/** `npm run migrate`: brings the database up to this version and ends. For services that run with MIGRATE=off. */
import { settingsOrExit } from '../config.ts'
import { prepareDatabase } from '../jobs/prepare-database.ts'
import { reachServer } from '../store/database/server.ts'
import { explain } from './explain.ts'

const settings = settingsOrExit()
try {
  const server = await reachServer({
    url: settings.DATABASE_URL,
    dataFolder: settings.ASFOUND_DATA,
    onTrouble: (message) => console.error(message),
  })
  const ran = await prepareDatabase(server.url)
  console.log(ran.length === 0 ? 'The database is up to date.' : `Ran ${ran.join(', ')}.`)
  server.release()
} catch (fault) {
  explain(fault)
  process.exitCode = 1
}
