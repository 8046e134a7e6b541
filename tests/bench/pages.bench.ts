/**
 * Pages a second: the queries of a page with its rendering, against the same queries alone, in turn and eight at once;
 * then the same page asked for over HTTP, compressed, with its weight.
 */
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { gunzipSync } from 'node:zlib'
import { must } from '../../src/base/result.ts'
import { enrolCast, tokenFor } from '../../src/cli/demonstration/enrol.ts'
import { loadStories } from '../../src/cli/demonstration/load.ts'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import { readSettings } from '../../src/config.ts'
import { layout } from '../../src/http/pages/layout/layout.ts'
import type { Reader } from '../../src/http/pages/layout/reader.ts'
import { presentParcelFile } from '../../src/http/pages/parcel/file.ts'
import { parcelFile } from '../../src/http/pages/parcel/file-view.ts'
import { filterOf, queueQuery } from '../../src/http/pages/queue/filter.ts'
import { presentQueue } from '../../src/http/pages/queue/present.ts'
import { queueView } from '../../src/http/pages/queue/view.ts'
import { createLogger } from '../../src/logger.ts'
import { listDiscrepancies } from '../../src/operations/discrepancies/list-discrepancies.ts'
import { listLetters } from '../../src/operations/letters/read-letter.ts'
import { readParcelFile } from '../../src/operations/parcels/read-parcel-file.ts'
import { startService } from '../../src/service.ts'

const ROUNDS = 9
const AT_ONCE = 8
const ASKED = 40

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-bench-'))
const environment = {
  PORT: '0',
  ASFOUND_DATA: folder,
  LOG_LEVEL: 'error',
  JOBS: 'off',
  REQUESTS_PER_MINUTE: '1000000',
}
const service = await startService(
  must(readSettings(environment)),
  createLogger('error'),
  async (services) => {
    await loadStories(services, await enrolCast(services.database), readStories())
  },
)
const { services, address } = service
const cast = await enrolCast(services.database)
const actor = cast.reviewer
const authorization = `Bearer ${await tokenFor(services.database, actor, new Date())}`
const here = '/counties/quillback'
const reader: Reader = {
  role: 'reviewer',
  county: { id: 'quillback', name: 'Quillback County' },
  bySession: true,
}

const NUMBER = '07-0446-0027'
const parcelQueries = async () => ({
  read: must(await readParcelFile(services, actor, NUMBER)),
  letters: must(await listLetters(services, actor, NUMBER)).letters,
})
const parcelPage = async () => {
  const { read, letters } = await parcelQueries()
  const page = presentParcelFile(read, 'reviewer', letters, null, service.services.book, 'quillback')
  const options = { county: 'quillback', pictures: () => null, came: null, at: null, notice: null, own: null }
  return layout({ reader, here, languages: [] }, { title: NUMBER, body: parcelFile(page, options) })
}

const query = queueQuery.parse({})
const queueQueries = async () =>
  must(await listDiscrepancies(services, actor, filterOf(query), undefined, 41))
const queuePage = async () => {
  const page = presentQueue(await queueQueries(), query, `${here}/queue`, new Date())
  const body = queueView(page, { county: 'quillback', path: `${here}/queue`, query, next: null })
  return layout({ reader, here, languages: [] }, { title: 'Queue', body })
}

const overHttp = (url: string) => async () =>
  (await fetch(`${address}${url}`, { headers: { authorization, accept: 'text/html' } })).text()

/** Milliseconds for each, with eight under way all the time. */
async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now()
  let left = ASKED
  const worker = async () => {
    while (left-- > 0) await work()
  }
  await Promise.all(Array.from({ length: AT_ONCE }, worker))
  return (performance.now() - from) / ASKED
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!
const perSecond = (ms: number): string => `${Math.round(1_000 / ms)} a second`

async function weight(url: string): Promise<string> {
  const { request } = await import('node:http')
  const sent = await new Promise<Buffer>((resolve, reject) => {
    const headers = { authorization, accept: 'text/html', 'accept-encoding': 'gzip' }
    request(`${address}${url}`, { headers }, (answer) => {
      const parts: Buffer[] = []
      answer.on('data', (part: Buffer) => parts.push(part)).on('end', () => resolve(Buffer.concat(parts)))
    })
      .on('error', reject)
      .end()
  })
  const whole = gunzipSync(sent).length
  return `${(sent.length / 1_000).toFixed(1)} kB over the wire of ${(whole / 1_000).toFixed(1)} kB`
}

for (const [what, page, queries, url] of [
  ['the parcel', parcelPage, parcelQueries, `${here}/parcels/${NUMBER}`],
  ['the queue', queuePage, queueQueries, `${here}/queue`],
] as const) {
  const asked = overHttp(url)
  for (const work of [page, queries, asked]) await timed(work)
  const rounds: { page: number; queries: number; asked: number }[] = []
  for (let round = 0; round < ROUNDS; round++) {
    rounds.push({ page: await timed(page), queries: await timed(queries), asked: await timed(asked) })
  }
  console.log(
    JSON.stringify({
      what: `${what}, queried and rendered`,
      value: perSecond(median(rounds.map((it) => it.page))),
      limit: `its queries alone: ${perSecond(median(rounds.map((it) => it.queries)))}`,
      ratio: Number(median(rounds.map((it) => it.page / it.queries)).toFixed(2)),
      aim: 2,
      overHttp: perSecond(median(rounds.map((it) => it.asked))),
      weight: await weight(url),
    }),
  )
}
await service.stop()
await rm(folder, { recursive: true })
