/**
 * Runs one import in a process of its own, as a worker does, and prints how long it took and how much memory it held:
 * `node import-alone.ts <database> <originals> <account> <organization> <import>`.
 */
import { uuidv7 } from 'uuidv7'
import { openOriginals } from '../../../src/files/originals.ts'
import { runImport } from '../../../src/operations/imports/run-import.ts'
import { openDatabase } from '../../../src/store/database/database.ts'
import { COUNTY } from '../../support/people.ts'

const [url, originals, account, organization, id] = process.argv.slice(2) as [
  string,
  string,
  string,
  string,
  string,
]
const database = openDatabase({ url, maxConnections: 4, onTrouble: () => {} })
const context = {
  database,
  clock: () => new Date(),
  newId: uuidv7,
  files: await openOriginals(originals),
  jobs: { enqueue: async () => uuidv7(), check: async () => {} },
} as never
const samples: number[] = []
const watch = setInterval(() => samples.push(process.memoryUsage().rss / 1_048_576), 50)
const from = performance.now()
const counts = await runImport(context, {
  id,
  actor: { county: COUNTY, account, organization, role: 'reviewer' },
  data: { import: id },
  report: async () => {},
  signal: new AbortController().signal,
})
const seconds = (performance.now() - from) / 1000
clearInterval(watch)
const most = (list: readonly number[]) => Math.round(Math.max(...list))
process.stdout.write(
  JSON.stringify({
    seconds,
    counts,
    firstThirdMb: most(samples.slice(0, Math.ceil(samples.length / 3))),
    lastThirdMb: most(samples.slice(-Math.ceil(samples.length / 3))),
  }),
)
await database.close()
