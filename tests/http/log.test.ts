import { Writable } from 'node:stream'
import { sql } from 'kysely'
import { expect, test } from 'vitest'
import { buildApp } from '../../src/http/app.ts'
import { createLogger } from '../../src/logger.ts'
import { administer, transact } from '../../src/store/database/transact.ts'
import { testApp } from '../support/app.ts'
import { requestTo } from './access/matrix/requests.ts'
import { written } from './access/matrix/table.ts'
import { liveThrough } from './access/matrix/world.ts'

const service = await testApp()
const { services, people } = service
const world = await liveThrough(service)
const lines: string[] = []
const into = new Writable({
  write: (chunk, _, done) => {
    lines.push(String(chunk))
    done()
  },
})
const app = await buildApp({ ...services, logger: createLogger('trace', into) })

const CANARY = 'canary-words'
const ADDRESS = '198.51.100.77'

/** Every text in it with the canary after it. */
function marked(value: unknown): unknown {
  if (typeof value === 'string') return `${value} ${CANARY}`
  if (Array.isArray(value)) return value.map(marked)
  if (typeof value !== 'object' || value === null) return value
  return {
    ...Object.fromEntries(Object.entries(value).map(([key, it]) => [key, marked(it)])),
    [CANARY]: CANARY,
  }
}

test('nothing that was sent, no secret and nobody’s name is in the log, whoever asks whatever route however', async () => {
  const served = app.routesServed
    .filter(({ url, method }) => !url.startsWith('/docs') && method !== 'HEAD')
    .flatMap(({ method, url }) => [method].flat().map((one) => ({ method: one, url: written(url) })))
  const askers = ['reviewer', 'firm', 'agent', 'nobody', 'guesser'] as const
  let asked = 0
  for (const { method, url } of served)
    for (const who of askers) {
      const role = who === 'nobody' || who === 'guesser' ? 'reviewer' : who
      const request = await requestTo(world, method, url, role)
      const token = who === 'nobody' ? undefined : who === 'guesser' ? `${CANARY}-token` : people[who].token
      const headers = {
        ...request.headers,
        'x-strange': CANARY,
        'user-agent': CANARY,
        cookie: `${CANARY}=${CANARY}; asfound_session=${CANARY}`,
        'idempotency-key': `${CANARY}-${asked}`,
        'x-forwarded-for': ADDRESS,
        ...(token ? { authorization: `Bearer ${token}` } : {}),
      }
      const query = { ...(request.query as object), q: CANARY, password: CANARY }
      const forms = typeof request.payload === 'string'
      const sent = forms
        ? { payload: `${request.payload}&password=${CANARY}&name=${CANARY}&reason=${CANARY}` }
        : request.body && !Buffer.isBuffer(request.body)
          ? { body: marked(request.body) as object }
          : {}
      await app.inject({ ...request, ...sent, query, headers })
      asked++
    }
  for (const payload of [`name=desk.${CANARY}&password=${CANARY}`, `code=${CANARY}`])
    for (const url of ['/sign-in', '/sign-in/code', '/invitation', '/account/password'])
      await app.inject({
        method: 'POST',
        url,
        headers: { 'content-type': 'application/x-www-form-urlencoded', origin: 'http://localhost:80' },
        payload,
      })
  // What PostgreSQL can't read it repeats in its message.
  const unreadable = await transact(services.database, people.reviewer, (tx) =>
    sql`select ${CANARY}::uuid`.execute(tx),
  ).catch((fault: Error & { code?: string }) => fault)
  expect(unreadable).toMatchObject({ code: '22P02', message: expect.stringContaining(CANARY) })
  app.log.error({ err: unreadable }, 'impossible')
  await app.close()

  const names = await administer(services.database, async (tx) => [
    ...(await tx.selectFrom('sign_in').select('name as it').execute()),
    ...(await tx.selectFrom('organization').select('name as it').execute()),
  ])
  const secrets = [
    CANARY,
    ADDRESS,
    '127.0.0.1',
    world.code,
    world.invitation,
    ...Object.values(people).map(({ token }) => token),
    ...names.map(({ it }) => it),
  ]
  const text = lines.join('')
  const told = secrets.filter((it) => text.includes(it))
  expect(told.map((it) => [it, lines.find((line) => line.includes(it))?.slice(0, 600)])).toEqual([])
  // And there was a log to look through.
  expect(lines.filter((line) => line.includes('"answered"')).length).toBeGreaterThanOrEqual(asked)
  expect(asked).toBeGreaterThan(700)
}, 180_000)
