import { setTimeout as wait } from 'node:timers/promises'
import type { InjectOptions } from 'fastify'
import pg from 'pg'
import { afterAll, beforeEach, describe, expect, test } from 'vitest'
import { buildApp } from '../../src/http/app.ts'
import { openJobs } from '../../src/jobs/start.ts'
import { openDatabase } from '../../src/store/database/database.ts'
import { transact } from '../../src/store/database/transact.ts'
import { testApp } from '../support/app.ts'
import type { People } from '../support/people.ts'
import { newParcel, permit1974 } from '../support/quillback.ts'
import { flakyProxy } from './flaky-proxy.ts'

/** The database goes away for a while, falls silent, or is slow: the service says so, keeps its feet, and comes back. */

const direct = await testApp()
const { people, services } = direct
const proxy = await flakyProxy(direct.url)
const troubles: string[] = []
const onTrouble = (fault: Error) => void troubles.push(fault.message)
// What takes half a minute in service takes a second and a half here.
const database = openDatabase({ url: `${proxy.url}?query_timeout=1500`, maxConnections: 4, onTrouble })
const jobs = await openJobs({
  url: proxy.url,
  database,
  clock: services.clock,
  newId: services.newId,
  atOnce: 1,
  onTrouble,
})
const ran: string[] = []
await jobs.work({ 'reconcile-parcel': async ({ id }) => void ran.push(id) })
const app = await buildApp({ ...services, database, jobs })
afterAll(async () => {
  proxy.set('fair')
  await app.close()
  await jobs.stop(2_000)
  await database.close()
  await proxy.close()
})
beforeEach(async () => {
  proxy.set('fair')
  await expect.poll(ready, { timeout: 20_000 }).toBe(200)
})

const here = '/v1/counties/quillback'
const ready = async () => (await app.inject('/health/ready')).statusCode
const ask = async (who: keyof People, request: InjectOptions) => {
  const headers = { authorization: `Bearer ${people[who].token}`, ...request.headers }
  const from = performance.now()
  const answer = await app.inject({ ...request, headers })
  return {
    status: answer.statusCode,
    retryAfter: Number(answer.headers['retry-after']),
    ms: performance.now() - from,
  }
}
const enter = (parcel: string, number: string) =>
  ask('reviewer', {
    method: 'POST',
    url: `${here}/parcels/${parcel}/permits`,
    headers: { 'idempotency-key': number },
    body: { ...permit1974, number },
  })
const numbersOf = async (parcel: string): Promise<string[]> => {
  const { body } = await direct.ask('reviewer', { url: `${here}/parcels/${parcel}` })
  return body.permits.map((it: { record: { number: string } }) => it.record.number)
}

describe('a database that is gone', () => {
  test('is told at once, with when to come again; the process is live and not ready; then all goes on', async () => {
    const { number } = await newParcel(services)
    expect((await enter(number, 'before')).status).toBe(201)
    proxy.set('cut')
    const answers = await Promise.all([
      enter(number, 'during'),
      ask('reviewer', { url: `${here}/parcels/${number}` }),
      ask('stranger', { url: '/v1/counties' }),
    ])
    for (const { status, retryAfter, ms } of answers) {
      expect(status).toBe(503)
      expect(retryAfter).toBeGreaterThan(0)
      expect(ms).toBeLessThan(6_500)
    }
    const health = await app.inject('/health/ready')
    expect([health.statusCode, health.json().detail]).toEqual([503, expect.stringMatching(/database.*jobs/)])
    expect((await app.inject('/health/live')).statusCode).toBe(200)
    proxy.set('fair')
    await expect.poll(ready, { timeout: 20_000 }).toBe(200)
    expect((await enter(number, 'during')).status).toBe(201)
    expect(await numbersOf(number)).toEqual(['before', 'during'])
  })

  test('in the middle of many writes: each was done or refused, and sent again it is there once', async () => {
    const parcels = await Promise.all(Array.from({ length: 12 }, () => newParcel(services)))
    const toSend = parcels.flatMap(({ number }) =>
      ['a', 'b'].map((name) => ({ number, name: `${number}-${name}` })),
    )
    const sent: { number: string; name: string; first: Awaited<ReturnType<typeof enter>> }[] = []
    const cuts = [3, 8, 14]
    const lane = async () => {
      for (let next = toSend.shift(); next; next = toSend.shift()) {
        sent.push({ ...next, first: await enter(next.number, next.name) })
        // With the others' requests half-way.
        if (sent.length < cuts[0]!) continue
        cuts.shift()
        proxy.set('cut')
        await wait(50)
        proxy.set('fair')
      }
    }
    await Promise.all([lane(), lane(), lane(), lane()])
    expect(new Set(sent.map(({ first }) => first.status))).toEqual(new Set([201, 503]))
    for (const { number, name, first } of sent) {
      let { status } = first
      for (let tries = 0; status !== 201 && tries < 20; tries++) {
        await wait(100)
        status = (await enter(number, name)).status
      }
      expect(status).toBe(201)
    }
    for (const { number } of parcels)
      expect((await numbersOf(number)).sort()).toEqual([`${number}-a`, `${number}-b`])
  })

  test('for longer: jobs that were left before it, and workers, are still there after', async () => {
    const parcel = await newParcel(services)
    proxy.set('cut')
    const id = await transact(services.database, people.reviewer, async (tx) => {
      const made = await openJobs({ ...jobsDirect() })
      try {
        return await made.enqueue(tx, people.reviewer, 'reconcile-parcel', {
          parcel: parcel.id,
          occasion: 'asked-for',
        })
      } finally {
        await made.stop(100)
      }
    })
    await wait(4_000)
    expect(ran).not.toContain(id)
    proxy.set('fair')
    await expect.poll(() => ran, { timeout: 20_000 }).toContain(id)
  })
})

describe.each(['silent', 'dead'] as const)('a database that has fallen %s', (weather) => {
  test('keeps nobody waiting for ever; when it is back, what was sent again is there once', async () => {
    const { number } = await newParcel(services)
    await enter(number, `warm-${weather}`)
    proxy.set(weather)
    const answers = await Promise.all([
      enter(number, weather),
      ask('reviewer', { url: `${here}/parcels/${number}` }),
      app.inject('/health/ready').then(({ statusCode }) => ({ status: statusCode, ms: 0, retryAfter: 1 })),
    ])
    expect(answers.map(({ status }) => status)).toEqual([503, 503, 503])
    for (const { ms, retryAfter } of answers) {
      expect(ms).toBeLessThan(9_000)
      expect(retryAfter).toBeGreaterThan(0)
    }
    proxy.set('fair')
    await expect.poll(ready, { timeout: 20_000 }).toBe(200)
    expect((await enter(number, weather)).status).toBe(201)
    expect(await numbersOf(number)).toEqual([`warm-${weather}`, weather])
  })
})

describe('a slow database', () => {
  test('makes slow answers, and where too many wait the others are turned away at once', async () => {
    const { number } = await newParcel(services)
    const patient = openDatabase({ url: proxy.url, maxConnections: 4, onTrouble })
    const slow = await buildApp({ ...services, database: patient, jobs })
    proxy.set({ lateMs: 10 })
    const headers = { authorization: `Bearer ${people.reviewer.token}` }
    const get = () => slow.inject({ url: `${here}/parcels/${number}/status`, headers })
    expect((await get()).statusCode).toBe(200)
    const crowd = await Promise.all(Array.from({ length: 200 }, get))
    const turnedAway = crowd.filter(({ statusCode }) => statusCode !== 200)
    for (const answer of turnedAway) {
      expect(answer.statusCode).toBe(503)
      expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0)
    }
    // At once, that is; a few that were let in may have waited too long for a connection.
    const atOnce = turnedAway.filter((answer) => answer.json().type === '/problems/overloaded')
    expect(atOnce.length).toBeGreaterThan(100)
    expect(crowd.length - turnedAway.length).toBeGreaterThanOrEqual(4)
    proxy.set('fair')
    expect((await get()).statusCode).toBe(200)
    await slow.close()
    await patient.close()
  })
})

describe('a statement that takes for ever', () => {
  test('is ended in its time, each request is answered, none piles up, and then all goes on', async () => {
    const { number } = await newParcel(services)
    // What takes half a minute in service takes a second here.
    const address = new URL(direct.url)
    address.searchParams.set('statement_timeout', '1000')
    const bounded = openDatabase({ url: address.href, maxConnections: 4, onTrouble })
    const stuck = await buildApp({ ...services, database: bounded, jobs })
    const owner = new pg.Client({ connectionString: direct.url })
    await owner.connect()
    try {
      const headers = { authorization: `Bearer ${people.reviewer.token}` }
      const send = async (named: string) => {
        const from = performance.now()
        const answer = await stuck.inject({
          method: 'POST',
          url: `${here}/parcels/${number}/permits`,
          headers: { ...headers, 'idempotency-key': `stuck-${named}` },
          body: { ...permit1974, number: `stuck-${named}` },
        })
        const retryAfter = Number(answer.headers['retry-after'])
        return { status: answer.statusCode, retryAfter, ms: performance.now() - from }
      }
      await owner.query('begin')
      await owner.query('select from parcel where number = $1 for update', [number])
      const crowd = await Promise.all(Array.from({ length: 80 }, (_, at) => send(String(at))))
      for (const { status, retryAfter, ms } of crowd) {
        expect(status).toBe(503)
        expect(retryAfter).toBeGreaterThan(0)
        // Eight for each connection are let in, each after at most five seconds of waiting for one, and a second of work.
        expect(ms).toBeLessThan(9_000)
      }
      expect(bounded.counts().waiting).toBe(0)
      const { rows } = await owner.query<{ n: number }>(
        `select count(*)::int as n from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'`,
      )
      expect(rows[0]?.n).toBe(0)
      await owner.query('rollback')
      expect((await send('0')).status).toBe(201)
      expect(await numbersOf(number)).toEqual(['stuck-0'])
    } finally {
      await owner.end()
      await stuck.close()
      await bounded.close()
    }
  })
})

function jobsDirect() {
  return {
    url: direct.url,
    database: services.database,
    clock: services.clock,
    newId: services.newId,
    atOnce: 1,
    onTrouble: () => {},
  }
}
