import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { sql } from 'kysely'
import { afterAll, expect, test, vi } from 'vitest'
import { buildApp } from '../../src/http/app.ts'
import { openDatabase } from '../../src/store/database/database.ts'
import { withoutCounty } from '../../src/store/database/transact.ts'
import { testApp } from '../support/app.ts'

const CONNECTIONS = 2
/** As `turn-away.ts` has it: so many for each connection may run or wait. */
const INSIDE = CONNECTIONS * 8

const routes: FastifyPluginAsyncZod = async (app) => {
  const config = { access: 'open' as const }
  app.get('/slow', { config }, async ({ context }) => {
    await withoutCounty(context.database, (tx) => sql`select pg_sleep(0.1)`.execute(tx))
    return { ok: true }
  })
  app.get('/holding', { config }, async () => {
    for (const end = performance.now() + 1_200; performance.now() < end; );
    return { ok: true }
  })
  app.get('/quick', { config }, async () => ({ ok: true }))
}

const { services, url } = await testApp()
const database = openDatabase({ url, maxConnections: CONNECTIONS, onTrouble: () => {} })
const app = await buildApp({ ...services, database }, routes)
const origin = await app.listen({ host: '127.0.0.1', port: 0 })
afterAll(async () => {
  await app.close()
  await database.close()
})

async function get(path: string) {
  const from = performance.now()
  const answer = await fetch(`${origin}${path}`)
  const body = (await answer.json()) as { readonly type?: string }
  return {
    status: answer.status,
    retryAfter: Number(answer.headers.get('retry-after')),
    type: body.type,
    ms: performance.now() - from,
  }
}

test('of a crowd those inside finish, the others are told at once when to come again, and then all goes on', async () => {
  await get('/v1/slow')
  const crowd = await Promise.all(Array.from({ length: 250 }, () => get('/v1/slow')))
  const done = crowd.filter(({ status }) => status === 200)
  const away = crowd.filter(({ status }) => status !== 200)
  expect(done.length).toBeGreaterThanOrEqual(INSIDE)
  expect(away.length).toBeGreaterThan(100)
  for (const { status, retryAfter, type } of away)
    expect([status, retryAfter, type]).toEqual([503, 5, '/problems/overloaded'])
  // Nobody inside waits for more than those who were let in before: 16 of a tenth of a second each, two at a time.
  expect(Math.max(...done.map(({ ms }) => ms))).toBeLessThan(6_000)
  expect(Math.max(...away.map(({ ms }) => ms))).toBeLessThan(Math.max(...done.map(({ ms }) => ms)))
  expect(database.counts().waiting).toBe(0)
  const after = await Promise.all(Array.from({ length: INSIDE / 2 }, () => get('/v1/slow')))
  expect(after.map(({ status }) => status)).toEqual(after.map(() => 200))
})

test('a loop that is held up turns requests away, finishes what it has, is seen by watchers, and recovers', async () => {
  // Putting the service together is not held against it once it is over.
  await vi.waitFor(async () => expect((await get('/v1/quick')).status).toBe(200), { timeout: 20_000 })
  const inside = get('/v1/slow')
  // One after the other: it is the mean delay of a second that counts, and one long task alone is no overload.
  const lane = async () => {
    const statuses: number[] = []
    for (let at = 0; at < 5; at++) statuses.push((await get('/v1/holding')).status)
    return statuses
  }
  const holding = Promise.all([lane(), lane()])
  const seen: { status: number; retryAfter: number }[] = []
  const watched: number[] = []
  for (let tries = 0; tries < 200 && !seen.some(({ status }) => status === 503); tries++) {
    seen.push(await get('/v1/quick'))
    watched.push((await get('/health/live')).status)
  }
  expect(seen.at(-1)).toMatchObject({ status: 503, retryAfter: 5 })
  expect(new Set(watched)).toEqual(new Set([200]))
  expect((await inside).status).toBe(200)
  const held = (await holding).flat()
  expect(held).toContain(200)
  expect(held.filter((status) => status !== 200 && status !== 503)).toEqual([])
  await expect.poll(async () => (await get('/v1/quick')).status, { timeout: 10_000 }).toBe(200)
})
