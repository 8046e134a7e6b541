import net, { type AddressInfo } from 'node:net'
import { setTimeout as wait } from 'node:timers/promises'
import { promisify } from 'node:util'
import { afterAll, expect, test, vi } from 'vitest'
import { buildApp } from '../../src/http/app.ts'
import { registerRoutes } from '../../src/http/routes.ts'
import { testApp } from '../support/app.ts'

// What takes minutes in service takes a second or two here.
const PATIENCE = { headersMs: 700, requestMs: 1_500, silenceMs: 1_200, lookMs: 100 }
const { services, people } = await testApp({ settings: { BODY_LIMIT_KB: 64 } })
const app = await buildApp(services, registerRoutes, PATIENCE)
await app.listen({ host: '127.0.0.1', port: 0 })
const { port } = app.server.address() as AddressInfo
afterAll(() => app.close())

const open = promisify(app.server.getConnections).bind(app.server)

type Heard = { readonly text: string; readonly ms: number; readonly ended: boolean }

/** Sends pieces with a pause before each, until they are all sent or the connection is ended; then waits for its end. */
async function talk(pieces: Iterable<string>, pauseMs: number, patienceMs = 6_000): Promise<Heard> {
  const from = performance.now()
  const socket = net.connect(port, '127.0.0.1')
  let text = ''
  let ended = false
  const end = new Promise<void>((resolve) =>
    socket.once('close', () => {
      ended = true
      resolve()
    }),
  )
  socket.setEncoding('utf8').on('data', (piece) => {
    text += piece
  })
  socket.on('error', () => {})
  for (const piece of pieces) {
    if (ended) break
    socket.write(piece)
    await Promise.race([wait(pauseMs), end])
  }
  await Promise.race([end, wait(patienceMs)])
  socket.destroy()
  return { text, ms: performance.now() - from, ended }
}

function* dripping(head: string, piece: string): Generator<string, undefined> {
  yield head
  for (let at = 0; at < 200; at++) yield piece
}
const headOf = (headers: string) =>
  `POST /v1/calculations/tank-capacity HTTP/1.1\r\nhost: here\r\nauthorization: Bearer ${people.agent.token}\r\n` +
  `content-type: application/json\r\n${headers}\r\n\r\n`

test('headers that come a byte at a time are cut, and said why', async () => {
  const { text, ms, ended } = await talk(
    dripping('GET /v1/counties HTTP/1.1\r\nhost: here\r\nx-a: ', 'a'),
    50,
  )
  expect([ended, text.split('\r\n')[0]]).toEqual([true, 'HTTP/1.1 408 Request Timeout'])
  expect(JSON.parse(text.split('\r\n\r\n')[1]!)).toMatchObject({
    type: '/problems/unreadable-request',
    status: 408,
    requestId: expect.stringMatching(/^[\w-]{36}$/),
  })
  expect(ms).toBeLessThan(PATIENCE.headersMs + 1_500)
})

test('a body that comes a byte at a time is cut', async () => {
  const { text, ms, ended } = await talk(dripping(headOf('content-length: 5000'), ' '), 50)
  expect([ended, text.split('\r\n')[0]]).toEqual([true, 'HTTP/1.1 408 Request Timeout'])
  expect(ms).toBeLessThan(PATIENCE.requestMs + 1_500)
})

test.each([
  ['says nothing at all', ''],
  ['stops in the middle of its headers', 'GET /v1/counties HTTP/1.1\r\nhost: he'],
  ['stops in the middle of its body', headOf('content-length: 5000')],
])('a connection that %s is cut', async (_, said) => {
  const { ms, ended } = await talk([said], 10)
  expect(ended).toBe(true)
  expect(ms).toBeLessThan(PATIENCE.requestMs + 1_500)
})

test('a body with no end is cut when it is too large, whether or not it says how long it is', async () => {
  const chunk = `${(8_192).toString(16)}\r\n${' '.repeat(8_192)}\r\n`
  const chunked = await talk(dripping(headOf('transfer-encoding: chunked'), chunk), 5)
  expect([chunked.ended, chunked.text]).toEqual([true, expect.stringMatching(/^HTTP\/1\.1 413 .*too-large/s)])
  const told = await talk([headOf('content-length: 99999999')], 10)
  expect(told.text).toMatch(/^HTTP\/1\.1 413 .*too-large/s)
})

test('headers without end, and what is no HTTP, are told and cut', async () => {
  const long = await talk(dripping('GET / HTTP/1.1\r\nhost: here\r\n', `x-a: ${'a'.repeat(2_000)}\r\n`), 1)
  expect([long.ended, long.text]).toEqual([
    true,
    expect.stringMatching(/^HTTP\/1\.1 431 .*unreadable-request/s),
  ])
  const none = await talk(['\u0016\u0003\u0001 hello\r\n\r\n'], 1)
  expect([none.ended, none.text]).toEqual([
    true,
    expect.stringMatching(/^HTTP\/1\.1 400 .*unreadable-request/s),
  ])
})

test('three hundred of them hinder nobody', async () => {
  const slow = Array.from({ length: 300 }, () => talk(dripping(headOf('content-length: 5000'), ' '), 200))
  await vi.waitFor(async () => expect(await open()).toBe(300), { timeout: 20_000 })
  const headers = { authorization: `Bearer ${people.agent.token}` }
  for (let at = 0; at < 10; at++) {
    const from = performance.now()
    const answer = await fetch(`http://127.0.0.1:${port}/v1/counties`, { headers })
    expect(answer.status).toBe(200)
    await answer.arrayBuffer()
    expect(performance.now() - from).toBeLessThan(1_000)
  }
  const all = await Promise.all(slow)
  expect(all.filter(({ ended }) => ended)).toHaveLength(300)
})
