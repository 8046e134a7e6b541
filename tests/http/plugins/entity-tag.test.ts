import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { requireMatch, tagRevision } from '../../../src/http/plugins/entity-tag.ts'
import { testApp } from '../../support/app.ts'

let revision = 3
const thing = z.object({ revision: z.number() })

const routes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/thing',
    { config: { access: 'open' }, schema: { response: { 200: thing } } },
    async (_, reply) => {
      tagRevision(reply, revision)
      return { revision }
    },
  )
  app.get('/list', { config: { access: 'open' } }, async () => [1, 2, 3])
  app.put(
    '/thing',
    { config: { access: 'open', replaces: true }, schema: { response: { 200: thing } } },
    async (request, reply) => {
      requireMatch(request, revision)
      revision++
      tagRevision(reply, revision)
      return { revision }
    },
  )
}

const { ask } = await testApp({ routes })

describe('reads', () => {
  test('carry the tag of their revision and are 304 to whoever has it', async () => {
    expect((await ask('nobody', { url: '/v1/thing' })).headers.etag).toBe('"r3"')
    for (const sent of ['"r3"', 'W/"r3"', '"r1", "r3"', '*']) {
      const { status, body, headers } = await ask('nobody', {
        url: '/v1/thing',
        headers: { 'if-none-match': sent },
      })
      expect([status, body, headers.etag]).toEqual([304, '', '"r3"'])
    }
    expect((await ask('nobody', { url: '/v1/thing', headers: { 'if-none-match': '"r2"' } })).status).toBe(200)
  })

  test('without a revision carry the tag of their bytes', async () => {
    const { headers } = await ask('nobody', { url: '/v1/list' })
    expect(headers.etag).toMatch(/^W\/"[\w-]{20,}"$/)
    const again = await ask('nobody', { url: '/v1/list', headers: { 'if-none-match': String(headers.etag) } })
    expect(again.status).toBe(304)
  })
})

describe('a write that replaces', () => {
  const put = (headers: Record<string, string>) => ask('nobody', { method: 'PUT', url: '/v1/thing', headers })

  test('needs If-Match: 428 without', async () => {
    expect((await put({})).body.type).toBe('/problems/version-needed')
  })

  test.each(['"r2"', 'W/"r3"', '"r3", "r4"', 'r3', '"nonsense"'])(
    'is refused with 412 for %s',
    async (sent) => {
      const { status, body } = await put({ 'if-match': sent })
      expect([status, body.type]).toEqual([412, '/problems/stale'])
    },
  )

  test('is done for the version that is there, once', async () => {
    const done = await put({ 'if-match': '"r3"' })
    expect([done.status, done.headers.etag]).toEqual([200, '"r4"'])
    expect((await put({ 'if-match': '"r3"' })).status).toBe(412)
    expect((await put({ 'if-match': '*' })).status).toBe(200)
  })
})
