import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterAll, expect, test } from 'vitest'
import { prepareDatabase } from '../../src/jobs/prepare-database.ts'
import { holdEmbeddedServer } from '../../src/store/database/embedded/hold.ts'
import { reachServer } from '../../src/store/database/server.ts'
import { dice } from '../forms/dice.ts'
import type { People } from '../support/people.ts'
import { account } from './account.ts'
import { enrolled, untilJobsAreDone } from './aftermath.ts'
import { type Ledger, work } from './clients.ts'
import { type ServiceProcess, serviceProcess } from './service-process.ts'

/**
 * A day's mixed work pressed into minutes: permits, inspections, decisions, papers and letters by clients that never rest,
 * and readers of statuses, files, queue, searches and exports beside them. Then memory and open files must be what they
 * were when the work began, and everything is accounted for. DAY_MINUTES=60 makes it an hour.
 */
const MINUTES = Number(process.env.DAY_MINUTES || 0.25)
const WRITERS = 2
const READERS = 2
const PARCELS = Math.ceil(4_000 + 600 * MINUTES)

const dataFolder = await mkdtemp(path.join(os.tmpdir(), 'asfound-day-'))
let service: ServiceProcess | undefined
afterAll(async () => {
  await service?.stop()
  await rm(dataFolder, { recursive: true, force: true, maxRetries: 20, retryDelay: 250 })
})

type Figures = { readonly heap: number; readonly resident: number; readonly files: number }

test(`${MINUTES} minutes of a day's work leave memory and open files flat`, {
  timeout: 240_000 + MINUTES * 60_000,
}, async () => {
  const server = await reachServer({ url: undefined, dataFolder, onTrouble: () => {} })
  await prepareDatabase(server.url)
  const { people, numbers } = await enrolled(server.url, PARCELS)
  const day = await serviceProcess({ ASFOUND_DATA: dataFolder, MIGRATE: 'off', LOG_LEVEL: 'warn' })
  service = day
  await day.start()
  server.release()

  const ledger: Ledger = { acknowledged: [], wrong: [], repeats: [], retries: 0, sent: 0 }
  const begun = Date.now()
  const end = begun + MINUTES * 60_000
  const goOn = () => Date.now() < end
  const read: Record<number, number> = {}
  const samples: Figures[] = []
  await Promise.all([
    ...Array.from({ length: WRITERS }, (_, at) =>
      work({ origins: [day.origin], people, dice: dice(20_261_201 + at), ledger, parcels: numbers, goOn }),
    ),
    ...Array.from({ length: READERS }, (_, at) => reader(day.origin, people, at, goOn, read)),
    (async () => {
      for (; goOn(); await wait(Math.min(5_000, (MINUTES * 60_000) / 30)))
        samples.push(await figures(day.origin))
    })(),
  ])
  const held = await holdEmbeddedServer({ dataFolder })
  const url = held.url('asfound')
  await untilJobsAreDone(url)
  const faults = await account({ acknowledged: ledger.acknowledged, url, dataFolder })
  held.release()

  // The first sixth is the warming up. Of a share of time its least counts: that is what is left after collecting.
  const sixth = Math.floor(samples.length / 6)
  const least = (part: readonly Figures[], of: keyof Figures) => Math.min(...part.map((it) => it[of]))
  const [early, late] = [samples.slice(sixth, 3 * sixth), samples.slice(4 * sixth)]
  const grown = (of: keyof Figures) => least(late, of) / least(early, of)
  const MB = 1_048_576
  process.stdout.write(
    `${MINUTES} minutes: ${ledger.acknowledged.length} writes acknowledged, ${JSON.stringify(read)} answers read, ` +
      `${ledger.wrong.length + faults.length} wrong; heap ${(least(early, 'heap') / MB).toFixed(0)} to ${(least(late, 'heap') / MB).toFixed(0)} MB, ` +
      `resident ${(least(early, 'resident') / MB).toFixed(0)} to ${(least(late, 'resident') / MB).toFixed(0)} MB, ` +
      `files ${least(early, 'files')} to ${least(late, 'files')}.\n`,
  )
  expect(ledger.wrong).toEqual([])
  expect(faults).toEqual([])
  expect(Object.keys(read).filter((status) => status !== '200' && status !== '503')).toEqual([])
  // In half a minute caches still fill; over a quarter of an hour they have.
  expect(grown('heap')).toBeLessThan(MINUTES < 15 ? 2 : 1.15)
  expect(grown('resident')).toBeLessThan(MINUTES < 15 ? 1.5 : 1.15)
  expect(least(late, 'files') - least(early, 'files')).toBeLessThan(20)
})

async function reader(
  origin: string,
  people: People,
  seed: number,
  goOn: () => boolean,
  read: Record<number, number>,
): Promise<void> {
  const chance = dice(99 + seed)
  const here = '/v1/counties/quillback'
  while (goOn()) {
    const parcel = `07-0000-${String(chance.whole(1, 60)).padStart(4, '0')}`
    const [who, at] = chance.pick<readonly ['agent' | 'firm' | 'reviewer', string]>([
      ['agent', `${here}/parcels/${parcel}/status`],
      ['agent', `/counties/quillback/parcels/${parcel}`],
      ['firm', `${here}/parcels/${parcel}/inspection-brief`],
      ['reviewer', `/counties/quillback/parcels/${parcel}`],
      ['reviewer', '/counties/quillback/queue'],
      ['reviewer', `${here}/discrepancies?limit=50`],
      ['reviewer', `/counties/quillback/search?q=${parcel.slice(0, 9)}`],
      ['reviewer', `${here}/exports/permits.csv`],
    ])
    const answer = await fetch(`${origin}${at}`, {
      headers: { authorization: `Bearer ${people[who].token}` },
    }).catch(() => undefined)
    await answer?.arrayBuffer().catch(() => {})
    if (answer) read[answer.status] = (read[answer.status] ?? 0) + 1
    await wait(20)
  }
}

async function figures(origin: string): Promise<Figures> {
  const text = await (await fetch(`${origin}/metrics`)).text()
  const of = (name: string) => Number(new RegExp(`^${name} (\\S+)$`, 'm').exec(text)?.[1])
  return {
    heap: of('nodejs_heap_size_used_bytes'),
    resident: of('process_resident_memory_bytes'),
    files: of('process_open_fds'),
  }
}
