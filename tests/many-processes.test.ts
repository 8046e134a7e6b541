import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'
import { uuidv7 } from 'uuidv7'
import { afterAll, expect, test } from 'vitest'
import { openDatabase } from '../src/store/database/database.ts'
import { fillCounty } from './bench/county/fill.ts'
import { emptyDatabase } from './support/database.ts'
import { COUNTY, enrolPeople } from './support/people.ts'

const MAIN = path.join(import.meta.dirname, '../src/main.ts')
const PARCELS = 400

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-many-'))
const url = await emptyDatabase()
const children: ChildProcess[] = []
afterAll(async () => {
  for (const child of children) child.kill('SIGKILL')
  await rm(folder, { recursive: true, force: true })
})

type Process = { readonly child: ChildProcess; readonly address: string }

/** The service as `npm start` runs it, on a free port. */
async function start(environment: Record<string, string> = {}): Promise<Process> {
  const env = {
    PATH: process.env.PATH,
    PORT: '0',
    ASFOUND_DATA: folder,
    DATABASE_URL: url,
    JOBS_AT_ONCE: '1',
    REQUESTS_PER_MINUTE: '100000',
    ...environment,
  }
  const child = spawn(process.execPath, [MAIN], { env, stdio: ['ignore', 'pipe', 'inherit'] })
  children.push(child)
  let said = ''
  for await (const chunk of child.stdout!) {
    said += String(chunk)
    const found = /listening on (http:\S+?)"/.exec(said)
    if (!found) continue
    child.stdout!.resume()
    return { child, address: found[1]! }
  }
  throw new Error(`it ended instead of listening: ${said}`)
}

test('four processes on one database, one of them for the web alone and one of them killed: every parcel is reconciled once', async () => {
  // All at once on an empty database: one migrates, the others wait and find it done.
  const [web, ...workers] = await Promise.all([start({ JOBS: 'off' }), start(), start(), start()])
  const database = openDatabase({ url, maxConnections: 4, onTrouble: () => {} })
  const people = await enrolPeople(database)
  await fillCounty(
    { context: { database, newId: uuidv7 }, people },
    { seed: 1, parcels: PARCELS, inspected: 0.5 },
  )
  const owner = new pg.Client({ connectionString: url })
  await owner.connect()
  const count = async (query: string) => Number((await owner.query<{ n: string }>(query)).rows[0]!.n)

  const ask = async (from: Process, address: string, body?: object) => {
    const response = await fetch(`${from.address}/v1/counties/${COUNTY}${address}`, {
      method: body ? 'POST' : 'GET',
      headers: { authorization: `Bearer ${people.reviewer.token}`, 'content-type': 'application/json' },
      ...(body ? { body: JSON.stringify(body) } : {}),
    })
    expect(response.status).toBeLessThan(300)
    return (await response.json()) as { id: string; state: string; parcels: Record<string, number> }
  }
  const done = ({ parcels }: { parcels: Record<string, number> }) =>
    Object.entries(parcels).reduce((sum, [outcome, n]) => (outcome === 'waiting' ? sum : sum + n), 0)

  const { id } = await ask(web!, '/reruns', { cause: 'asked-for' })
  const total = await count('select count(*) n from rerun_parcel')
  let seen = await ask(web!, `/reruns/${id}`)
  while (done(seen) === 0) {
    await wait(20)
    seen = await ask(web!, `/reruns/${id}`)
  }
  const victim = workers[0]!
  victim.child.kill('SIGKILL')
  await once(victim.child, 'exit')
  expect(done(await ask(web!, `/reruns/${id}`))).toBeLessThan(total)

  while (seen.state !== 'done') {
    await wait(100)
    seen = await ask(web!, `/reruns/${id}`)
    // Whoever is asked tells of the same work, and it never goes back.
    const there = await ask(workers[1]!, `/reruns/${id}`)
    expect(done(there)).toBeGreaterThanOrEqual(done(seen))
  }
  expect(seen.parcels).toMatchObject({ waiting: 0, failed: 0, unaffected: 0 })
  expect(await count('select count(*) n from reconciliation')).toBe(total)
  expect(await count('select count(distinct parcel) n from reconciliation')).toBe(total)
  expect(await count('select count(*) n from parcel_status')).toBe(total)
  // More than one process had a share in it.
  expect(
    await count(
      `select count(*) n from job where kind = 'share-rerun' and coalesce((result ->> 'parcels')::int, 0) > 0`,
    ),
  ).toBeGreaterThan(1)
  await owner.end()
  await database.close()
}, 300_000)
