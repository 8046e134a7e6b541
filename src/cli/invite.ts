/**
 * `npm run invite`: takes a county in, or another department of one, and prints the link by which its first person
 * chooses a password. Everybody else is invited by people.
 */
import { parseArgs } from 'node:util'
import { settingsOrExit } from '../config.ts'
import { prepareDatabase } from '../jobs/prepare-database.ts'
import { inviteAdministrator } from '../operations/access/invite-administrator.ts'
import { parcelFormatFrom } from '../reading/parcel-number.ts'
import { openDatabase } from '../store/database/database.ts'
import { reachServer } from '../store/database/server.ts'
import { newId } from '../store/new-id.ts'
import { explain } from './explain.ts'

const USAGE = `npm run invite -- --county quillback --department 'Health department' --person desk@quillback.example
and for a county that is not served yet also:
  --name 'Quillback County' --pack quillback --parcel 07-0412-0031   (an example of its parcel numbers; several
  ways of writing them with commas between, the main one first)`

const { values } = parseArgs({
  options: Object.fromEntries(
    ['county', 'department', 'person', 'name', 'pack', 'parcel'].map((name) => [
      name,
      { type: 'string' as const },
    ]),
  ),
})
const given = values as Readonly<Record<string, string | undefined>>
const { county, department, person, name, pack, parcel } = given
const parcelFormat = parcel ? parcelFormatFrom(parcel.split(',').map((example) => example.trim())) : null
if (!county || !department || !person || (name !== undefined && (!pack || !parcelFormat))) {
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
  const begin = name && pack && parcelFormat ? { name, rulePack: pack, parcelFormat } : null
  const context = { database, clock: () => new Date(), newId }
  const made = await inviteAdministrator(context, { county, department, signInName: person, begin })
  if (made.ok) {
    const address = settings.PUBLIC_ADDRESS ?? `http://localhost:${settings.PORT}`
    console.log(
      `Open this link within a week. It works once:\n${address}/invitation?code=${made.value.secret}`,
    )
  } else {
    console.error(made.error)
    process.exitCode = 1
  }
  await database.close()
  server.release()
} catch (fault) {
  explain(fault)
  process.exitCode = 1
}
