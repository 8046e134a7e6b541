import { mkdtemp, readdir, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'
import { afterAll, expect, test } from 'vitest'
import { prepareDatabase } from '../../src/jobs/prepare-database.ts'
import { holdEmbeddedServer } from '../../src/store/database/embedded/hold.ts'
import { reachServer } from '../../src/store/database/server.ts'
import { dice } from '../forms/dice.ts'
import { account } from './account.ts'
import { enrolled, untilJobsAreDone } from './aftermath.ts'
import { ask, type Ledger, work } from './clients.ts'
import { killHard, processIn, type ServiceProcess, serviceProcess } from './service-process.ts'

/**
 * The service, its worker, its embedded PostgreSQL and that one's supervisor are killed (SIGKILL) at random moments
 * while clients work; then everything is accounted for. KILL_ROUNDS and KILL_SEED make it longer, and another.
 */
const ROUNDS = Number(process.env.KILL_ROUNDS || 6)
const SEED = Number(process.env.KILL_SEED || 20_261_012)
const CLIENTS = 3
/** More than three clients get through in so many rounds. */
const PARCELS = 4_000 + 60 * ROUNDS

const dataFolder = await mkdtemp(path.join(os.tmpdir(), 'asfound-kill-'))
const services: ServiceProcess[] = []
afterAll(async () => {
  for (const service of services) await service.kill()
  // The server's supervisor sees that nobody holds it any more; until it has ended, files come and go.
  for (let tries = 0; tries < 100 && processIn(dataFolder, 'supervisor.pid') !== undefined; tries++)
    await wait(200)
  await rm(dataFolder, { recursive: true, force: true })
})

async function enrol() {
  const server = await reachServer({ url: undefined, dataFolder, onTrouble: () => {} })
  await prepareDatabase(server.url)
  return { server, ...(await enrolled(server.url, PARCELS)) }
}

test(`nothing is lost in ${ROUNDS} rounds of killing (seed ${SEED})`, {
  timeout: 180_000 + ROUNDS * 30_000,
}, async () => {
  const chance = dice(SEED)
  const { server, people, numbers: parcels } = await enrol()
  const settings = { ASFOUND_DATA: dataFolder, MIGRATE: 'off', LOG_LEVEL: 'warn' }
  const web = await serviceProcess({ ...settings, JOBS: 'off' })
  const worker = await serviceProcess({ ...settings, JOBS: 'on' })
  services.push(web, worker)
  await Promise.all([web.start(), worker.start()])
  server.release()

  const ledger: Ledger = { acknowledged: [], wrong: [], repeats: [], retries: 0, sent: 0 }
  let working = true
  const clients = Array.from({ length: CLIENTS }, (_, index) =>
    work({
      origins: [web.origin, worker.origin],
      people,
      dice: dice(SEED + index + 1),
      ledger,
      parcels,
      goOn: () => working,
    }),
  )

  const killed: Record<string, number> = {}
  const victims: Readonly<Record<string, () => Promise<boolean>>> = {
    'the service': () => killService(web),
    'the worker': () => killService(worker),
    both: async () => (await Promise.all([killService(web), killService(worker)])).every(Boolean),
    postmaster: async () => killHard(processIn(dataFolder, 'cluster/postmaster.pid')),
    supervisor: async () => killHard(processIn(dataFolder, 'supervisor.pid')),
    'a connection': () => killBackend(),
  }
  async function killService(service: ServiceProcess): Promise<boolean> {
    await service.kill()
    await wait(chance.whole(0, 1_000))
    await service.start()
    return true
  }
  async function killBackend(): Promise<boolean> {
    const client = await ownClient().catch(() => undefined)
    const { rows } = (await client
      ?.query<{ pid: number }>(
        `select pid from pg_stat_activity where application_name = 'asfound' order by random() limit 1`,
      )
      .catch(() => undefined)) ?? { rows: [] }
    await client?.end().catch(() => {})
    return killHard(rows[0]?.pid)
  }
  async function ownClient(): Promise<pg.Client> {
    const held = await holdEmbeddedServer({ dataFolder })
    const client = new pg.Client({ connectionString: held.url('asfound') })
    client.on('error', () => {})
    await client.connect().finally(() => held.release())
    return client
  }

  const names = Object.keys(victims)
  for (let round = 0; round < ROUNDS; round++) {
    await wait(chance.whole(500, 2_500))
    // Every kind in turn, in an order of chance, so that a short run has them all.
    const name = round % names.length === 0 ? shuffle(names)[0]! : names[round % names.length]!
    if (await victims[name]!()) killed[name] = (killed[name] ?? 0) + 1
  }
  function shuffle(list: string[]): string[] {
    for (let at = list.length - 1; at > 0; at--) {
      const other = chance.whole(0, at)
      ;[list[at], list[other]] = [list[other]!, list[at]!]
    }
    return list
  }
  await wait(1_000)
  working = false
  await Promise.all(clients)

  // What was acknowledged is answered again with the same words, whoever is asked.
  const differing: string[] = []
  for (const { request, answer } of ledger.repeats.slice(0, 40)) {
    const again = await ask(chance.pick([web.origin, worker.origin]), people, request)
    if (again.replayed !== 'true' || JSON.stringify(again.body) !== JSON.stringify(answer))
      differing.push(request.url)
  }

  const held = await holdEmbeddedServer({ dataFolder })
  const url = held.url('asfound')
  await untilJobsAreDone(url)
  const faults = await account({ acknowledged: ledger.acknowledged, url, dataFolder })
  held.release()
  const drafts = await readdir(path.join(dataFolder, 'originals/drafts'))
  const count = Object.values(killed).reduce((sum, it) => sum + it, 0)
  process.stdout.write(
    `${count} killed (${JSON.stringify(killed)}); ${ledger.acknowledged.length} writes acknowledged, ` +
      `${ledger.retries} of ${ledger.sent} requests sent again, ${faults.length} lost or wrong, ` +
      `${drafts.length} drafts of files left aside.\n`,
  )
  expect(ledger.wrong).toEqual([])
  expect(differing).toEqual([])
  expect(faults).toEqual([])
  expect(count).toBeGreaterThanOrEqual(ROUNDS - 1)
  expect(ledger.acknowledged.length).toBeGreaterThan(ROUNDS * 4)
  expect(ledger.retries).toBeGreaterThan(0)
})
