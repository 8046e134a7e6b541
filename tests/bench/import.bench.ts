/**
 * An index of permits imported from a CSV, rows validated one by one, against COPY of the very rows that come of it into
 * the same tables of an equal database, with their keys, indexes and triggers. `ROWS=200000 npm run bench -- import`.
 */
import { execFile } from 'node:child_process'
import { createReadStream, createWriteStream } from 'node:fs'
import path from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { from as copyFrom, to as copyTo } from 'pg-copy-streams'
import { must } from '../../src/base/result.ts'
import { startImport } from '../../src/operations/imports/start-import.ts'
import { takeInFile } from '../../src/operations/imports/take-in-file.ts'
import { type BenchService, benchService } from './county/bench-service.ts'
import { fillCounty } from './county/fill.ts'
import { madeCounty } from './county/make-county.ts'
import { perSecond, seconds, sized, tell } from './county/tell.ts'

const ROWS = sized('ROWS', 20_000)
const county = { seed: 7, parcels: Math.ceil(ROWS / 0.99) }

function* index(): Generator<string> {
  yield 'Parcel,Permit No,Type,Issued,Final,Bedrooms,Tank (gal),Tank material,components.effluent-line.material,components.effluent-line.pipeDiameter\n'
  let rows = 0
  for (const { number, permits } of madeCounty(county)) {
    for (const it of permits) {
      if (rows === ROWS) return
      rows += 1
      const tank = it.components?.find(({ kind }) => kind === 'tank')
      yield `${number},${it.number},${it.kind},${it.issuedOn},${it.approvedOn},${it.bedrooms ?? ''},${String(tank?.capacity ?? '').replace(' gal', '')},${tank?.material ?? ''},pvc,4 in\n`
    }
  }
}

type Took = { readonly seconds: number; readonly firstThirdMb: number; readonly lastThirdMb: number }

async function imported({ context, people, url, dataFolder }: BenchService): Promise<Took> {
  const kept = await context.files.keep(Readable.from(index()))
  const file = {
    kind: 'permits',
    format: 'csv',
    hash: kept.hash,
    bytes: kept.bytes,
    fileName: 'index.csv',
  } as const
  const { id } = must(await takeInFile(context, people.reviewer, file))
  must(await startImport(context, people.reviewer, id, false))
  const { account, organization } = people.reviewer
  const alone = fileURLToPath(new URL('county/import-alone.ts', import.meta.url))
  const originals = path.join(dataFolder, 'originals')
  const { stdout } = await promisify(execFile)(process.execPath, [
    alone,
    url,
    originals,
    account,
    organization,
    id,
  ])
  const took = JSON.parse(stdout) as Took & { counts: { added: number; rejected: number } }
  const { added, rejected } = took.counts
  if (added !== ROWS || rejected !== 0) throw new Error(`${added} added, ${rejected} rejected`)
  return took
}

const TABLES = ['permit', 'permit_revision'] as const

async function copied(from: BenchService, to: BenchService): Promise<number> {
  const files = TABLES.map((table) => ({ table, file: path.join(from.dataFolder, table) }))
  for (const { table, file } of files)
    await pipeline(from.owner.query(copyTo(`copy ${table} to stdout`)), createWriteStream(file))
  // The parcels of the other database have ids of their own: the same ones, so that the keys hold.
  await pipeline(
    from.owner.query(copyTo('copy (select county, id, number, address from parcel) to stdout')),
    createWriteStream(`${files[0]!.file}-parcels`),
  )
  await pipeline(
    createReadStream(`${files[0]!.file}-parcels`),
    to.owner.query(copyFrom('copy parcel (county, id, number, address) from stdin')),
  )
  const account = from.people.reviewer.account
  const organization = from.people.reviewer.organization
  await to.owner.query(`insert into organization (id, kind, name) values ($1, 'county', 'the other')`, [
    organization,
  ])
  await to.owner.query(
    `insert into account (id, organization, label, role) values ($1, $2, 'desk', 'reviewer')`,
    [account, organization],
  )
  return seconds(async () => {
    await to.owner.query('begin')
    for (const { table, file } of files)
      await pipeline(createReadStream(file), to.owner.query(copyFrom(`copy ${table} from stdin`)))
    await to.owner.query('commit')
  })
}

const [ours, limit] = [await benchService(), await benchService()]
try {
  // As many parcels as the rows need: four of five have a permit, one in four of those two.
  await fillCounty(ours, county, 'parcels')
  const { seconds: took, firstThirdMb, lastThirdMb } = await imported(ours)
  const peakMb = Math.max(firstThirdMb, lastThirdMb)
  const copy = await copied(ours, limit)
  tell({
    what: `import of ${ROWS.toLocaleString('en-US')} permits`,
    value: `${took.toFixed(1)} s (${perSecond(ROWS, took)}), at most ${firstThirdMb} MB in the first third and ${lastThirdMb} MB in the last`,
    limit: `COPY of the same rows into the same tables: ${copy.toFixed(1)} s (${perSecond(ROWS, copy)})`,
    ratio: copy / took,
    aim: '0.5 or better, under 300 MB',
    met: copy / took >= 0.5 && peakMb < 300,
  })
} finally {
  await ours.close()
  await limit.close()
}
