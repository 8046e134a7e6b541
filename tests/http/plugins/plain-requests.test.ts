import { once } from 'node:events'
import net from 'node:net'
import path from 'node:path'
import { text } from 'node:stream/consumers'
import { describe, expect, test } from 'vitest'
import { publicPath } from '../../../src/http/pages/public-files.ts'
import { testApp } from '../../support/app.ts'
import { newParcel } from '../../support/quillback.ts'

const { app, services, ask } = await testApp()
const { port } = new URL(await app.listen({ host: '127.0.0.1', port: 0 }))
const parcel = await newParcel(services)
const at = `/v1/counties/quillback/parcels/${parcel.number}`

/** What comes back to these very bytes. */
async function answerTo(bytes: string): Promise<string> {
  const socket = net.connect(Number(port), '127.0.0.1')
  await once(socket, 'connect')
  socket.write(bytes)
  socket.end()
  return text(socket)
}

describe('a request that could be read in two ways', () => {
  const to = 'POST /v1/calculations/tank-capacity HTTP/1.1\r\nHost: one.example\r\n'
  test.each([
    ['by two hosts', 'GET /health/live HTTP/1.1\r\nHost: one.example\r\nHost: two.example\r\n\r\n'],
    ['by two lengths', `${to}Content-Length: 2\r\nContent-Length: 3\r\n\r\n{} `],
    ['by a length and by chunks', `${to}Content-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n`],
  ])('%s is answered 400', async (_, bytes) => {
    expect(await answerTo(bytes)).toMatch(/^HTTP\/1\.1 400 /)
  })

  test('by a value that is given twice is told so', async () => {
    const { status, body } = await ask('reviewer', {
      url: '/v1/counties/quillback/discrepancies?limit=1&limit=2',
    })
    expect([status, body.errors?.[0]?.pointer]).toEqual([422, '/limit'])
  })
})

test('TRACE gives nothing of a request back', async () => {
  const said = await answerTo(
    'TRACE /health/live HTTP/1.1\r\nHost: one.example\r\nX-Own: word-of-mine\r\n\r\n',
  )
  expect(said).toMatch(/^HTTP\/1\.1 4\d\d /)
  expect(said).not.toContain('word-of-mine')
})

test('a browser is told to come by TLS alone, for a year at least', async () => {
  const { headers } = await app.inject({ url: '/sign-in', headers: { accept: 'text/html' } })
  const [, seconds] = /max-age=(\d+)/.exec(String(headers['strict-transport-security'])) ?? []
  expect(Number(seconds)).toBeGreaterThanOrEqual(31_536_000)
})

const folder = path.posix.dirname(publicPath('sheet.css'))
test.each([folder, `${folder}/`, `${folder}/..`, '/docs/..'])('%s lists no folder', async (url) => {
  expect(await answerTo(`GET ${url} HTTP/1.1\r\nHost: one.example\r\nConnection: close\r\n\r\n`)).toMatch(
    /^HTTP\/1\.1 (?:30\d|4\d\d) /,
  )
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
