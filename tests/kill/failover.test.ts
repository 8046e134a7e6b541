import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'
import { afterAll, expect, test } from 'vitest'
import { prepareDatabase } from '../../src/jobs/prepare-database.ts'
import { dice } from '../forms/dice.ts'
import { account } from './account.ts'
import { enrolled, untilJobsAreDone } from './aftermath.ts'
import { type Ledger, work } from './clients.ts'
import { flakyProxy } from './flaky-proxy.ts'
import { killHard, type ServiceProcess, serviceProcess } from './service-process.ts'
import { promote, type Server, startPrimary, startStandby } from './standby.ts'

/**
 * The machine of the primary database dies while clients work, its standby becomes the primary, and the address (here a
 * relay, in a county a name or a virtual address) moves over. Nothing that was acknowledged is lost, and the service goes
 * on without being started again. FAILOVER_ROUNDS makes it longer: each time the survivor gets a new standby and dies.
 */
const ROUNDS = Number(process.env.FAILOVER_ROUNDS || 1)
const CLIENTS = 3

const dataFolder = await mkdtemp(path.join(os.tmpdir(), 'asfound-failover-'))
const servers: Server[] = []
const services: ServiceProcess[] = []
afterAll(async () => {
  for (const service of services) await service.kill()
  for (const server of servers) await server.stop()
  await rm(dataFolder, { recursive: true, force: true })
})

test(`a primary that dies over to its standby loses nothing that was acknowledged, ${ROUNDS} times`, {
  timeout: 180_000 + ROUNDS * 60_000,
}, async () => {
  let primary = await startPrimary()
  servers.push(primary)
  const admin = new pg.Client({ connectionString: primary.url('postgres') })
  await admin.connect()
  await admin.query('create database asfound template template0')
  await admin.end()
  await prepareDatabase(primary.url('asfound'))
  const { people, numbers } = await enrolled(primary.url('asfound'), 4_000)
  const address = await flakyProxy(primary.url('asfound'))
  const service = await serviceProcess({
    ASFOUND_DATA: dataFolder,
    DATABASE_URL: address.url,
    MIGRATE: 'off',
    LOG_LEVEL: 'warn',
  })
  services.push(service)
  await service.start()
  const pid = service.pid()

  const ledger: Ledger = { acknowledged: [], wrong: [], repeats: [], retries: 0, sent: 0 }
  let working = true
  const clients = Array.from({ length: CLIENTS }, (_, index) =>
    work({
      origins: [service.origin],
      people,
      dice: dice(20_261_130 + index),
      ledger,
      parcels: numbers,
      goOn: () => working,
    }),
  )
  const more = async (count: number): Promise<void> => {
    const before = ledger.acknowledged.length
    await expect
      .poll(() => ledger.acknowledged.length - before, { timeout: 60_000 })
      .toBeGreaterThanOrEqual(count)
  }
  for (let round = 0; round < ROUNDS; round++) {
    const standby = await startStandby(primary)
    servers.push(standby)
    await more(20)
    expect(killHard(primary.pid)).toBe(true)
    // The address may move before the standby is anything but that: writes are put off, not refused as faults.
    address.move(standby.url('asfound'))
    const during = ledger.retries
    await expect.poll(() => ledger.retries - during, { timeout: 30_000 }).toBeGreaterThan(3)
    await promote(standby)
    primary = standby
    await more(20)
  }
  working = false
  await Promise.all(clients)
  await wait(500)
  await untilJobsAreDone(primary.url('asfound'))
  const faults = await account({
    acknowledged: ledger.acknowledged,
    url: primary.url('asfound'),
    dataFolder,
  })
  await address.close()
  process.stdout.write(
    `${ROUNDS} primaries lost; ${ledger.acknowledged.length} writes acknowledged, ${ledger.retries} of ${ledger.sent} ` +
      `requests sent again, ${faults.length} lost or wrong.\n`,
  )
  expect(ledger.wrong).toEqual([])
  expect(faults).toEqual([])
  expect(service.pid()).toBe(pid)
})
