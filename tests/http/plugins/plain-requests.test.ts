import { once } from 'node:events'
import net from 'node:net'
import { text } from 'node:stream/consumers'
import { describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'
import { newParcel } from '../../support/quillback.ts'

const { app, services, ask } = await testApp()
const { port } = new URL(await app.listen({ host: '127.0.0.1', port: 0 }))
const parcel = await newParcel(services)
const at = `/v1/counties/quillback/parcels/${parcel.number}`

describe('a request that could be read in two ways', () => {
  test('by two hosts is answered 400', async () => {
    const socket = net.connect(Number(port), '127.0.0.1')
    await once(socket, 'connect')
    socket.write('GET /health/live HTTP/1.1\r\nHost: one.example\r\nHost: two.example\r\n\r\n')
    socket.end()
    expect(await text(socket)).toMatch(/^HTTP\/1\.1 400 /)
  })
})

describe('an answer says for how long it may be kept', () => {
  test.each([
    ['GET', at, 200, 'private, no-cache'],
    ['GET', `${at}x`, 404, 'no-store'],
    ['POST', `${at}/letters`, 422, 'no-store'],
    ['GET', '/v1/tokens', 404, 'no-store'],
    ['GET', '/openapi.json', 200, 'private, no-cache'],
  ] as const)('%s %s', async (method, url, status, kept) => {
    const answer = await ask('reviewer', { method, url, ...(method === 'POST' ? { body: {} } : {}) })
    expect([answer.status, answer.headers['cache-control']]).toEqual([status, kept])
  })
})

describe('metrics without a token', () => {
  const from = (remoteAddress: string, headers = {}) =>
    app.inject({ url: '/metrics', remoteAddress, headers })
  test('are for this machine alone, and not through a proxy on it', async () => {
    expect((await from('127.0.0.1')).statusCode).toBe(200)
    expect((await from('::1')).statusCode).toBe(200)
    expect((await from('192.0.2.7')).statusCode).toBe(403)
    expect((await from('127.0.0.1', { 'x-forwarded-for': '192.0.2.7' })).statusCode).toBe(403)
  })
})

test('the page of the API is under the policy of all pages', async () => {
  const policy = async (url: string) =>
    (await app.inject({ url, headers: { accept: 'text/html' } })).headers['content-security-policy']
  expect(await policy('/docs/')).toBe(await policy('/sign-in'))
})
