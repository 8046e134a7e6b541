/**
 * Whether the service still answers while it is given the largest that it takes: /health/live is asked every 40 ms, from
 * this process, while one input after the other is worked off, and a bare fastify beside it is asked at the same times, so
 * that what the machine itself keeps waiting is told apart. `npm run bench -- live`; LIVE_PAGES and LIVE_ROWS are sizes.
 */
import http from 'node:http'
import { setTimeout as wait } from 'node:timers/promises'
import { findingsExample, permitExample } from '../../src/http/api/shapes/entries.ts'
import { densePage, typedPdf, typedPermit } from '../support/dense-pdf.ts'
import { COUNTY } from '../support/people.ts'
import { uploading } from '../support/upload.ts'
import { benchService } from './county/bench-service.ts'
import { fillCounty } from './county/fill.ts'
import { serve, stop } from './county/load.ts'
import { sized, tell } from './county/tell.ts'

const PAGES = sized('LIVE_PAGES', 1_000)
const ROWS = sized('LIVE_ROWS', 20_000)
const EVERY_MS = 40
const AIM_MS = 100
const HERE = `/v1/counties/${COUNTY}`

const bench = await benchService()
await fillCounty(bench, { seed: 3, parcels: 2_000, inspected: 0.3 })
await bench.owner.query('vacuum analyze')
const ours = await serve('ours', bench.url, { ASFOUND_DATA: bench.dataFolder, JOBS: 'on' })
const bare = await serve('bare', bench.url)
const asking = new http.Agent({ keepAlive: true, maxSockets: 64 })

/** Milliseconds until a whole answer came; `path` need not be there. */
const timed = (port: number, path: string): Promise<number> =>
  new Promise((resolve, reject) => {
    const from = performance.now()
    http
      .get({ port, host: '127.0.0.1', path, agent: asking }, (answer) => {
        answer.resume().once('end', () => resolve(performance.now() - from))
      })
      .once('error', reject)
  })

type Waits = { readonly live: number[]; readonly bare: number[] }

async function during(work: () => Promise<unknown>): Promise<Waits> {
  const waits: Waits = { live: [], bare: [] }
  let working = true
  const asked: Promise<void>[] = []
  const done = work().finally(() => {
    working = false
  })
  for (let next = performance.now(); working; next += EVERY_MS) {
    await wait(Math.max(0, next - performance.now()))
    asked.push(timed(ours.port, '/health/live').then((ms) => void waits.live.push(ms)))
    asked.push(timed(bare.port, '/nothing').then((ms) => void waits.bare.push(ms)))
  }
  await done
  await Promise.all(asked)
  return waits
}

async function ask<T>(method: string, path: string, body?: unknown, more: RequestInit = {}): Promise<T> {
  const answer = await fetch(`http://127.0.0.1:${ours.port}${HERE}${path}`, {
    method,
    ...more,
    headers: {
      authorization: `Bearer ${bench.people.reviewer.token}`,
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...more.headers,
    },
    ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  })
  const text = await answer.text()
  if (answer.status >= 500) throw new Error(`${method} ${path}: ${answer.status} ${text.slice(0, 300)}`)
  return (/^application\/json/.test(answer.headers.get('content-type') ?? '') ? JSON.parse(text) : text) as T
}

async function uploaded<T>(path: string, parts: Parameters<typeof uploading>[1]): Promise<T> {
  const { headers, body } = await uploading(path, parts)
  return ask('POST', path, undefined, {
    headers: headers as Record<string, string>,
    body: body as Buffer<ArrayBuffer>,
  })
}

async function jobDone(id: string | undefined): Promise<void> {
  if (id === undefined) throw new Error('no job was begun')
  for (let state = ''; state !== 'done' && state !== 'failed'; await wait(200))
    ({ state } = await ask<{ state: string }>('GET', `/jobs/${id}`))
}

let papers = 0

async function paper(pages: readonly (readonly string[])[]): Promise<void> {
  // The same file twice is refused.
  papers += 1
  const file = { bytes: Buffer.concat([typedPdf(pages), Buffer.from(`\n% ${papers}\n`)]), name: 'paper.pdf' }
  const { document, job } = await uploaded<{ document: { id: string }; job: string }>('/documents', { file })
  await jobDone(job)
  await ask('GET', `/documents/${document.id}`)
  await ask('GET', '/documents?limit=500')
}

const table = (rows: number): Buffer =>
  Buffer.from(
    `Parcel,Permit No,Type,Issued,Bedrooms,Tank (gal)\n${Array.from(
      { length: rows },
      (_, at) =>
        `07-${String(at % 2_000).padStart(4, '0')}-0001,L-${at},new,1974-06-04,${1 + (at % 5)},${900 + (at % 7) * 50}`,
    ).join('\n')}\n`,
  )

const components = (count: number) => {
  const [one] = permitExample.components as readonly object[]
  return Array.from({ length: count }, (_, at) => ({ ...one, label: `part ${at}` }))
}

const INPUTS: Readonly<Record<string, () => Promise<unknown>>> = {
  [`a paper of ${PAGES} typed pages`]: () => paper(Array.from({ length: PAGES }, (_, at) => typedPermit(at))),
  'a page of 6,000 words': () => paper([densePage(6_000)]),
  [`an import of ${ROWS} rows`]: async () => {
    papers += 1
    const file = {
      bytes: Buffer.concat([table(ROWS), Buffer.from(`07-0001-0001,M-${papers},new,1974-06-04,3,1000\n`)]),
      name: 'index.csv',
    }
    const { id } = await uploaded<{ id: string }>('/imports', { kind: 'permits', file })
    const { job } = await ask<{ job: string }>('POST', `/imports/${id}/run`)
    await jobDone(job)
  },
  'a rerun of the county': async () => {
    const { id } = await ask<{ id: string }>('POST', '/reruns', {})
    for (let state = ''; state !== 'done'; await wait(200))
      ({ state = 'done' } = await ask<{ state?: string }>('GET', `/reruns/${id}`))
  },
  'every export, twice': async () => {
    for (const what of [
      'parcels.csv',
      'parcels.geojson',
      'discrepancies.ndjson',
      'permits.csv',
      'permits.ndjson',
    ])
      await Promise.all([ask('GET', `/exports/${what}`), ask('GET', `/exports/${what}`)])
  },
  'proposed rules of 300,000 characters': () =>
    ask('POST', '/rules/trial', {
      yaml: `rules:\n${'  - { id: a, step: b }\n'.repeat(13_000)}`.slice(0, 299_000),
    }),
  'a permit of 20,000 values': () =>
    ask('POST', '/parcels/07-0001-0001/permits', {
      ...permitExample,
      number: 'L-1',
      components: components(1_800),
    }),
  'a megabyte of unknown keys': () =>
    ask(
      'POST',
      '/parcels/07-0001-0001/permits',
      Object.fromEntries(
        Array.from({ length: 19_000 }, (_, at) => [`key-of-no-field-${at}`, 'value of no field at all']),
      ),
    ),
  'a trial of sixty components': () =>
    ask('POST', '', undefined, {})
      .catch(() => undefined)
      .then(() =>
        fetch(`http://127.0.0.1:${ours.port}/v1/reconciliations/trial`, {
          method: 'POST',
          headers: {
            authorization: `Bearer ${bench.people.reviewer.token}`,
            'content-type': 'application/json',
          },
          body: JSON.stringify({
            rules: COUNTY,
            permits: [{ ...permitExample, components: components(60) }],
            findings: findingsExample,
          }),
        }).then((answer) => answer.text()),
      ),
}

const share = (sorted: readonly number[], of: number): number =>
  sorted[Math.min(sorted.length - 1, Math.ceil(sorted.length * of) - 1)] ?? Number.NaN

try {
  for (const [what, work] of Object.entries(INPUTS)) {
    const from = performance.now()
    const { live, bare: machine } = await during(async () => {
      // What takes but a moment is done for a while.
      do await work()
      while (performance.now() - from < 5_000)
    })
    const [told, limit] = [live.toSorted((a, b) => a - b), machine.toSorted((a, b) => a - b)]
    const [late, own] = [share(told, 0.999), share(limit, 0.999)]
    tell({
      what: `/health/live during ${what}`,
      value: `${late.toFixed(0)} ms at the 99.9th percentile of ${told.length}, ${share(told, 0.5).toFixed(1)} at the median, ${told.at(-1)?.toFixed(0)} at most`,
      limit: `a bare fastify at the same moments: ${own.toFixed(0)} ms`,
      ratio: late / own,
      aim: `within ${AIM_MS} ms`,
      met: late <= AIM_MS,
    })
  }
} finally {
  asking.destroy()
  await stop(ours)
  await stop(bare)
  await bench.close()
}
