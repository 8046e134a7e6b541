import { randomUUID } from 'node:crypto'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'
import { uuidv7 } from 'uuidv7'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { openJobs } from '../../src/jobs/start.ts'
import { transact } from '../../src/store/database/transact.ts'
import { testDatabase } from '../support/database.ts'
import { enrolPeople } from '../support/people.ts'
import { permit1974 } from '../support/quillback.ts'
import { type ServiceProcess, serviceProcess } from './service-process.ts'

/** Told to stop, the service finishes what is inside, hands back what does not finish, and ends in its time. */

const STOP_WITHIN_SECONDS = 6
const { url, database } = await testDatabase()
const people = await enrolPeople(database)
const dataFolder = await mkdtemp(path.join(os.tmpdir(), 'asfound-stop-'))
const settings = {
  DATABASE_URL: url,
  ASFOUND_DATA: dataFolder,
  LOG_LEVEL: 'warn',
  STOP_WITHIN_SECONDS: String(STOP_WITHIN_SECONDS),
}
const services: ServiceProcess[] = []
const started = async () => {
  const service = await serviceProcess(settings)
  services.push(service)
  await service.start()
  return service
}
const jobs = await openJobs({
  url,
  database,
  clock: () => new Date(),
  newId: uuidv7,
  atOnce: 1,
  onTrouble: () => {},
})
const owner = new pg.Client({ connectionString: url })
beforeAll(async () => {
  await owner.connect()
})
afterEach(async () => {
  await owner.query('rollback')
  for (const service of services.splice(0)) await service.kill()
})
afterAll(async () => {
  await owner.end()
  await jobs.stop(1_000)
  await rm(dataFolder, { recursive: true, force: true })
})

let numbers = 0
async function newParcel() {
  const [id, number] = [randomUUID(), `07-0044-${String(++numbers).padStart(4, '0')}`]
  await owner.query(`insert into parcel (county, id, number) values ('quillback', $1, $2)`, [id, number])
  return { id, number }
}
/** Whoever wants to change what is known of a parcel waits until this is undone. */
async function hold({ id }: { id: string }): Promise<void> {
  await owner.query('begin')
  await owner.query('select from parcel where id = $1 for update', [id])
}
const waiting = async (): Promise<number> => {
  const { rows } = await owner.query<{ n: number }>(
    `select count(*)::int as n from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'`,
  )
  return rows[0]!.n
}
const stateOf = async (id: string): Promise<string | undefined> =>
  (await owner.query<{ state: string }>('select state from job where id = $1', [id])).rows[0]?.state
const leave = (parcel: string) =>
  transact(database, people.reviewer, (tx) =>
    jobs.enqueue(tx, people.reviewer, 'reconcile-parcel', { parcel, occasion: 'asked-for' }),
  )

test('a request inside is finished, one that comes after is not begun, and the exit is clean and in time', async () => {
  const service = await started()
  const parcel = await newParcel()
  await hold(parcel)
  const headers = { authorization: `Bearer ${people.reviewer.token}`, 'content-type': 'application/json' }
  const inside = fetch(`${service.origin}/v1/counties/quillback/parcels/${parcel.number}/permits`, {
    method: 'POST',
    headers,
    body: JSON.stringify(permit1974),
  })
  await expect.poll(waiting, { timeout: 10_000 }).toBe(1)
  const from = performance.now()
  const stopped = service.stop()
  await wait(800)
  const after = await fetch(`${service.origin}/v1/counties`, { headers }).then(
    ({ status }) => status,
    () => 'no connection',
  )
  expect([503, 'no connection']).toContain(after)
  await owner.query('rollback')
  expect((await inside).status).toBe(201)
  expect(await stopped).toBe(0)
  expect(performance.now() - from).toBeLessThan(STOP_WITHIN_SECONDS * 1_000)
  const { rows } = await owner.query('select from permit where parcel = $1', [parcel.id])
  expect(rows).toHaveLength(1)
})

test('a job that can be finished in time is, and whoever watches it does not hold the stop up', async () => {
  const service = await started()
  const parcel = await newParcel()
  await hold(parcel)
  const job = await leave(parcel.id)
  await expect.poll(waiting, { timeout: 10_000 }).toBe(1)
  const headers = { authorization: `Bearer ${people.reviewer.token}` }
  const watched = await fetch(`${service.origin}/v1/counties/quillback/jobs/${job}/events`, { headers })
  expect(watched.status).toBe(200)
  const stopped = service.stop()
  await wait(800)
  await owner.query('rollback')
  expect(await watched.text()).toContain('event: job')
  expect(await stopped).toBe(0)
  expect(await stateOf(job)).toBe('done')
})

test('a job that can’t is handed back in time, and done by the next process', async () => {
  const service = await started()
  const parcel = await newParcel()
  await hold(parcel)
  const job = await leave(parcel.id)
  await expect.poll(waiting, { timeout: 10_000 }).toBe(1)
  const from = performance.now()
  await service.stop()
  expect(performance.now() - from).toBeLessThan(STOP_WITHIN_SECONDS * 1_000 + 1_000)
  expect(await stateOf(job)).not.toBe('done')
  await owner.query('rollback')
  await started()
  await expect.poll(() => stateOf(job), { timeout: 60_000, interval: 200 }).toBe('done')
  const { rows } = await owner.query('select from reconciliation where parcel = $1', [parcel.id])
  expect(rows).toHaveLength(1)
}, 90_000)
