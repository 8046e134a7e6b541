import fc from 'fast-check'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { cursorFrom, pageFrom, pageOf, pageQuery } from '../../../src/http/plugins/paging.ts'
import { testApp } from '../../support/app.ts'

const ALL = Array.from({ length: 23 }, (_, index) => index + 1)
const key = z.tuple([z.number()])

const routes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/numbers',
    {
      config: { access: 'open' },
      schema: {
        querystring: z.object({ ...pageQuery, odd: z.enum(['yes', 'no']).optional() }),
        response: { 200: pageOf(z.object({ n: z.number() })) },
      },
    },
    async (request, reply) => {
      const after = cursorFrom(request, key)?.[0] ?? 0
      const { limit, odd } = request.query
      const rows = ALL.filter((n) => n > after && (odd !== 'yes' || n % 2 === 1)).slice(0, limit + 1)
      return pageFrom(
        request,
        reply,
        rows,
        (n) => [n],
        (n) => ({ n }),
      )
    },
  )
}

const { ask } = await testApp({ routes })

async function walk(start: string): Promise<number[]> {
  const seen: number[] = []
  for (let url: string | null = start; url !== null; ) {
    const { status, body, headers } = await ask('nobody', { url })
    expect(status).toBe(200)
    seen.push(...body.items.map(({ n }: { n: number }) => n))
    expect(headers.link).toBe(body.next === null ? undefined : `<${body.next}>; rel="next"`)
    url = body.next
  }
  return seen
}

test('following next inspections everything once, in order, with the filters kept, at any page size', async () => {
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 30 }), fc.boolean(), async (limit, odd) => {
      const seen = await walk(`/v1/numbers?limit=${limit}${odd ? '&odd=yes' : ''}`)
      expect(seen).toEqual(odd ? ALL.filter((n) => n % 2 === 1) : ALL)
    }),
    { numRuns: 40 },
  )
})

test.each([
  ['limit=501', '/limit', 'at most 500'],
  ['limit=0', '/limit', 'at least 1'],
  ['limit=many', '/limit', 'write a number'],
  ['limit=2.5', '/limit', 'write a whole number'],
  ['cursor=%00nonsense', '/cursor', expect.stringMatching(/not a cursor of this list/)],
  [`cursor=${Buffer.from('["x"]').toString('base64url')}`, '/cursor', expect.stringMatching(/not a cursor/)],
])('%s is bad input', async (query, pointer, message) => {
  const { status, body } = await ask('nobody', { url: `/v1/numbers?${query}` })
  expect([status, body.errors]).toEqual([422, [{ in: 'query', pointer, message }]])
})
