import { Writable } from 'node:stream'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { OutsideFailure } from '../../src/base/outside-failure.ts'
import { ALL_ROLES } from '../../src/http/access/require-caller.ts'
import { buildApp } from '../../src/http/app.ts'
import { createLogger } from '../../src/logger.ts'
import { transact } from '../../src/store/database/transact.ts'
import { testApp } from '../support/app.ts'

const routes: FastifyPluginAsyncZod = async (app) => {
  const config = { access: 'open' as const }
  app.get('/gone', { config }, async () => {
    throw new OutsideFailure('The database is not available', { retryAfterSeconds: 5 })
  })
  app.get('/broken', { config }, async () => {
    throw new Error('the secret is 42')
  })
  app.get('/lies', { config, schema: { response: { 200: z.object({ n: z.number() }) } } }, async () => ({
    n: 'seven' as unknown as number,
  }))
  app.get(
    '/more',
    {
      config,
      schema: {
        response: { 200: z.object({ n: z.number(), list: z.array(z.union([z.string(), z.null()])) }) },
      },
    },
    async () => ({ n: 1, list: ['a', null], secret: 'not named by the schema' }),
  )
  app.get('/mine', { config: { access: ALL_ROLES } }, async () => ({ ok: true }))
  app.post(
    '/counties/:county/notes',
    {
      config: { access: ALL_ROLES },
      schema: { body: z.object({ text: z.string() }) },
    },
    async ({ body, actor, context }) => {
      await transact(context.database, actor, (tx) =>
        tx
          .insertInto('parcel')
          .values({
            county: actor.county,
            id: context.newId(),
            number: body.text,
            address: null,
            retired_on: null,
          })
          .execute(),
      )
      return { ok: true }
    },
  )
}

const { ask, services, people } = await testApp({ routes })

describe('failures', () => {
  test('an outside failure is 503 and says when to come again', async () => {
    const { status, headers, body } = await ask('nobody', { url: '/v1/gone' })
    expect([status, headers['retry-after'], body.type]).toEqual([503, '5', '/problems/unavailable'])
  })

  test('an impossible thing is 500 with an id and not a word more', async () => {
    const { status, headers, body } = await ask('nobody', { url: '/v1/broken' })
    expect([status, body]).toEqual([
      500,
      {
        type: '/problems/internal',
        title: 'Internal error',
        status: 500,
        requestId: headers['x-request-id'],
      },
    ])
  })

  test('nothing there, a wrong method, and an address that can’t be read', async () => {
    expect((await ask('nobody', { url: '/nothing' })).body.type).toBe('/problems/not-found')
    expect((await ask('nobody', { url: '/v1/gone', method: 'DELETE' })).status).toBe(404)
    expect((await ask('nobody', { url: '/v1/%zz' })).body.type).toBe('/problems/unreadable-request')
  })

  test('text that can’t be kept is bad input, not a fault', async () => {
    const { status, body } = await ask('reviewer', {
      method: 'POST',
      url: '/v1/counties/quillback/notes',
      body: { text: 'a\u0000b' },
    })
    expect([status, body.type]).toEqual([422, '/problems/invalid-input'])
  })
})

describe('answers', () => {
  test('that break their schema are caught when answers are checked', async () => {
    expect((await ask('nobody', { url: '/v1/lies' })).status).toBe(500)
  })

  test('hold nothing that their schema does not name, checked or fast', async () => {
    const fast = await buildApp({ ...services, settings: { ...services.settings, ANSWERS: 'fast' } }, routes)
    const both = [await ask('nobody', { url: '/v1/more' }), { body: (await fast.inject('/v1/more')).json() }]
    await fast.close()
    for (const { body } of both) expect(body).toEqual({ n: 1, list: ['a', null] })
  })

  test('carry the request’s id: the caller’s own when it is one', async () => {
    const own = await ask('nobody', { url: '/health/live', headers: { 'x-request-id': 'from-the-caller-1' } })
    expect(own.headers['x-request-id']).toBe('from-the-caller-1')
    const wild = await ask('nobody', { url: '/health/live', headers: { 'x-request-id': '"><script>' } })
    expect(wild.headers['x-request-id']).toMatch(/^[0-9a-f-]{36}$/)
  })

  test('allow nothing inline and nothing from elsewhere', async () => {
    const { headers } = await ask('nobody', { url: '/health/live' })
    const policy = String(headers['content-security-policy'])
    expect(policy).toMatch(/default-src 'none'/)
    expect(policy).not.toMatch(/unsafe|https?:|\*/)
    expect(headers['x-content-type-options']).toBe('nosniff')
  })
})

describe('the service’s own addresses', () => {
  test('live and ready', async () => {
    expect((await ask('nobody', { url: '/health/live' })).body).toEqual({ state: 'ok' })
    expect((await ask('nobody', { url: '/health/ready' })).body).toEqual({ state: 'ok' })
  })

  test('not ready, and says what is missing, while still live', async () => {
    const jobs = { ...services.jobs, check: () => Promise.reject(new OutsideFailure('gone')) }
    const limping = await buildApp({ ...services, jobs }, routes)
    const ready = await limping.inject('/health/ready')
    expect([ready.statusCode, ready.json().detail]).toEqual([503, 'Not available: jobs.'])
    expect((await limping.inject('/health/live')).statusCode).toBe(200)
    await limping.close()
  })

  test('metrics in Prometheus’ form, by route and not by address', async () => {
    await ask('nobody', { url: '/v1/nothing-here-at-all' })
    const { headers, body } = await ask('nobody', { url: '/metrics' })
    expect(headers['content-type']).toMatch(/^text\/plain; version=/)
    expect(body).toMatch(
      /asfound_http_request_seconds_count\{method="GET",route="\/health\/live",status="200"\} \d/,
    )
    expect(body).toMatch(/asfound_database_connections\{state="total"\} \d/)
    expect(body).not.toContain('nothing-here-at-all')
  })

  test('metrics for a token only, where one is set', async () => {
    const METRICS_TOKEN = 'a-token-for-metrics'
    const closed = await buildApp({ ...services, settings: { ...services.settings, METRICS_TOKEN } }, routes)
    const statusWith = async (authorization?: string) =>
      (await closed.inject({ url: '/metrics', headers: authorization ? { authorization } : {} })).statusCode
    expect(await statusWith()).toBe(401)
    expect(await statusWith('Bearer another')).toBe(401)
    expect(await statusWith(`Bearer ${METRICS_TOKEN}`)).toBe(200)
    await closed.close()
  })

  test('the description of the API names who may call, what is needed and what can go wrong', async () => {
    const { body } = await ask('nobody', { url: '/openapi.json' })
    expect(body.openapi).toBe('3.1.1')
    const { post } = body.paths['/v1/counties/{county}/notes']
    expect(Object.keys(post.responses)).toEqual(
      expect.arrayContaining(['401', '403', '413', '422', '429', '503']),
    )
    expect(post.responses['422'].content['application/problem+json'].schema).toEqual({
      $ref: '#/components/schemas/Problem',
    })
    expect(body.components.schemas.Problem.required).toEqual(['type', 'title', 'status', 'requestId'])
    expect(body.paths['/v1/more'].get.security).toEqual([])
  })

  test('the page of the API and everything it loads come from here', async () => {
    const page = await ask('nobody', { url: '/docs/' })
    expect([page.status, page.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8'])
    const loaded = [...String(page.body).matchAll(/(?:src|href)="([^"]+)"/g)].map(([, address]) => address!)
    expect(loaded.length).toBeGreaterThan(4)
    for (const address of loaded) {
      const url = new URL(address, 'http://here/docs/')
      expect(url.host, address).toBe('here')
      expect((await ask('nobody', { url: url.pathname })).status, address).toBe(200)
    }
    expect(page.headers['content-security-policy']).not.toMatch(/unsafe-inline|https:\/\//)
  })
})

test('more requests than a token may make are 429 and say when to go on; another token goes on', async () => {
  const strict = await buildApp(
    { ...services, settings: { ...services.settings, REQUESTS_PER_MINUTE: 3 } },
    routes,
  )
  const statusAs = async (who: 'firm' | 'agent') => {
    const headers = { authorization: `Bearer ${people[who].token}` }
    const { statusCode, headers: answered } = await strict.inject({ url: '/v1/mine', headers })
    return [statusCode, Number(answered['retry-after']) > 0]
  }
  const firm = [
    await statusAs('firm'),
    await statusAs('firm'),
    await statusAs('firm'),
    await statusAs('firm'),
    await statusAs('firm'),
  ]
  // The first counts against the address: until it is looked up, a token is nobody's.
  expect(firm.map(([status]) => status)).toEqual([200, 200, 200, 200, 429])
  expect(firm.at(-1)).toEqual([429, true])
  expect((await statusAs('agent'))[0]).toBe(200)
  expect((await strict.inject('/health/live')).statusCode).toBe(200)
  await strict.close()
})

test('while too many wait for the database, new requests are turned away and the watchers are not', async () => {
  const counts = () => ({ most: 2, total: 2, idle: 0, waiting: 17 })
  const full = await buildApp({ ...services, database: { ...services.database, counts } }, routes)
  const turned = await full.inject({
    url: '/v1/mine',
    headers: { authorization: `Bearer ${people.firm.token}` },
  })
  expect([turned.statusCode, turned.headers['retry-after'], turned.json().type]).toEqual([
    503,
    '5',
    '/problems/overloaded',
  ])
  expect((await full.inject('/health/live')).statusCode).toBe(200)
  await full.close()
})

test('the log has one line for a request and holds no token, query, body or row', async () => {
  const lines: string[] = []
  const into = new Writable({
    write: (chunk, _, done) => {
      lines.push(String(chunk))
      done()
    },
  })
  const logged = await buildApp({ ...services, logger: createLogger('info', into) }, routes)
  const headers = { authorization: `Bearer ${people.reviewer.token}` }
  await logged.inject({ url: '/v1/mine?q=12+mill+pond', headers })
  const note = {
    method: 'POST',
    url: '/v1/counties/quillback/notes',
    headers,
    body: { text: 'somebody-s-own-words' },
  } as const
  await logged.inject(note)
  expect((await logged.inject(note)).statusCode).toBe(500)
  await logged.close()
  const text = lines.join('')
  expect(lines.filter((line) => line.includes('"answered"'))).toHaveLength(3)
  expect(JSON.parse(lines[0]!)).toMatchObject({
    req: { method: 'GET', path: '/v1/mine' },
    res: { status: 200 },
  })
  expect(text).toMatch(/duplicate key/)
  for (const secret of [people.reviewer.token, 'mill', 'somebody-s-own-words'])
    expect(text).not.toContain(secret)
})
