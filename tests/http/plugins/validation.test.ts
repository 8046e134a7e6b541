import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { testApp } from '../../support/app.ts'

const routes: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/things/:size',
    {
      config: { access: 'open' },
      schema: {
        params: z.object({ size: z.coerce.number('write a number') }),
        querystring: z.object({ color: z.enum(['red', 'blue']) }),
        body: z.strictObject({ parts: z.array(z.object({ lengthFt: z.number() })), 'a/b': z.string() }),
        response: { 200: z.object({ size: z.number(), color: z.string(), parts: z.number() }) },
      },
    },
    async ({ params, query, body }) => ({
      size: params.size,
      color: query.color,
      parts: body.parts.length,
    }),
  )
}

const { ask, app } = await testApp({ routes })

test('every fault of path, query and body is told at once, each with where and what', async () => {
  const { status, headers, body } = await ask('nobody', {
    method: 'POST',
    url: '/v1/things/big?color=green',
    body: { parts: [{ lengthFt: 1 }, { lengthFt: 'long' }], surplus: 1 },
  })
  expect(status).toBe(422)
  expect(headers['content-type']).toBe('application/problem+json; charset=utf-8')
  expect(body).toMatchObject({
    type: '/problems/invalid-input',
    status: 422,
    requestId: headers['x-request-id'],
  })
  expect(body.errors).toEqual([
    { in: 'path', pointer: '/size', message: 'write a number' },
    { in: 'query', pointer: '/color', message: 'write one of: red, blue' },
    { in: 'body', pointer: '/parts/1/lengthFt', message: 'write a number' },
    { in: 'body', pointer: '/a~1b', message: expect.stringMatching(/^is missing/) },
    {
      in: 'body',
      pointer: '/surplus',
      message: 'there is no field of this name here; the fields are parts, a/b',
    },
  ])
})

test('what is good arrives as the schemas read it', async () => {
  const { body } = await ask('nobody', {
    method: 'POST',
    url: '/v1/things/12?color=red',
    body: { parts: [{ lengthFt: 1 }], 'a/b': 'x' },
  })
  expect(body).toEqual({ size: 12, color: 'red', parts: 1 })
})

test.each([
  ['broken JSON', '{"parts": [', 'application/json', 400, 'unreadable-request'],
  ['a poisoned prototype', '{"__proto__": {"x": 1}}', 'application/json', 400, 'unreadable-request'],
  ['no body', '', 'application/json', 400, 'unreadable-request'],
  ['another type', '<a/>', 'application/xml', 415, 'unsupported-type'],
  [
    'values within values without end',
    `{"parts": ${'['.repeat(5_000)}${']'.repeat(5_000)}}`,
    'application/json',
    400,
    'unreadable-request',
  ],
  ['too much', JSON.stringify({ x: 'x'.repeat(1_100_000) }), 'application/json', 413, 'too-large'],
])('%s is a problem of its own kind', async (_, payload, type, status, kind) => {
  const answer = await app.inject({
    method: 'POST',
    url: '/v1/things/1?color=red',
    payload,
    headers: { 'content-type': type },
  })
  expect([answer.statusCode, answer.json().type]).toEqual([status, `/problems/${kind}`])
})
