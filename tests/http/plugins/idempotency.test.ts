import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { beforeEach, describe, expect, test } from 'vitest'
import { z } from 'zod'
import { problem } from '../../../src/http/problem.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

let handled = 0
let gate: Promise<void> | undefined
const entry = z.object({ number: z.string(), fail: z.boolean().optional() })

const routes: FastifyPluginAsyncZod = async (app) => {
  const schema = { body: entry, response: { 201: z.object({ id: z.string(), number: z.string() }) } }
  const config = { access: ['reviewer' as const], idempotent: true }
  app.post('/counties/:county/parcels', { config, schema }, async (request, reply) => {
    handled++
    const { context, actor, body } = request
    const id = context.newId()
    await transact(context.database, actor, (tx) =>
      tx
        .insertInto('parcel')
        .values({ county: actor.county, id, number: body.number, address: null, retired_on: null })
        .execute(),
    )
    await gate
    if (body.fail) throw problem('conflict', { detail: 'no' })
    reply.code(201).header('location', `/parcels/${id}`)
    return { id, number: body.number }
  })
}

const { ask, services, people } = await testApp({ routes })

const post = (number: string, key?: string, extra: object = {}) =>
  ask('reviewer', {
    method: 'POST',
    url: '/v1/counties/quillback/parcels',
    headers: key === undefined ? {} : { 'idempotency-key': key },
    body: { number, ...extra },
  })

const countOf = (number: string) =>
  transact(services.database, people.reviewer, async (tx) => {
    const rows = await tx.selectFrom('parcel').select('id').where('number', '=', number).execute()
    return rows.length
  })

beforeEach(() => {
  handled = 0
  gate = undefined
})

describe('Idempotency-Key', () => {
  test('a repeat gets the first answer, word for word, and says that it is one', async () => {
    const first = await post('1', 'key-1')
    const again = await post('1', '"key-1"')
    expect(first.status).toBe(201)
    expect([again.status, again.body, again.headers.location]).toEqual([
      201,
      first.body,
      first.headers.location,
    ])
    expect([first.headers['idempotency-replayed'], again.headers['idempotency-replayed']]).toEqual([
      undefined,
      'true',
    ])
    expect(handled).toBe(1)
    expect(await countOf('1')).toBe(1)
  })

  test('a repeat with another body is refused', async () => {
    await post('2', 'key-2')
    const other = await post('2b', 'key-2')
    expect([other.status, other.body.type]).toEqual([422, '/problems/key-reused'])
    expect(await countOf('2b')).toBe(0)
  })

  test('a repeat while the first is under way is told to wait, and then gets its answer', async () => {
    const opened = Promise.withResolvers<void>()
    gate = opened.promise
    const first = post('3', 'key-3')
    await expect.poll(() => handled).toBe(1)
    const second = await post('3', 'key-3')
    expect([second.status, second.body.type, second.headers['retry-after']]).toEqual([
      409,
      '/problems/still-working',
      '1',
    ])
    opened.resolve()
    expect((await first).status).toBe(201)
    expect((await post('3', 'key-3')).body).toEqual((await first).body)
    expect(await countOf('3')).toBe(1)
  })

  test('a request that failed is not remembered, and left nothing', async () => {
    expect((await post('4', 'key-4', { fail: true })).status).toBe(409)
    expect(await countOf('4')).toBe(0)
    expect((await post('4', 'key-4')).status).toBe(201)
  })

  test('keys belong to an account: two may use the same one', async () => {
    await post('5', 'key-5')
    const { rows } = await transact(services.database, people.reviewer, async (tx) => ({
      rows: await tx.selectFrom('idempotency_key').select('account').where('key', '=', 'key-5').execute(),
    }))
    expect(rows).toEqual([{ account: people.reviewer.account }])
  })

  test('without a key every request is a new one', async () => {
    const [a, b] = [await post('6a'), await post('6b')]
    expect([a.status, b.status, handled]).toEqual([201, 201, 2])
  })

  test('a key that is none is bad input', async () => {
    const bad = await post('7', 'two words')
    expect([bad.status, bad.body.errors[0].in, bad.body.errors[0].pointer]).toEqual([
      422,
      'header',
      '/idempotency-key',
    ])
  })
})
