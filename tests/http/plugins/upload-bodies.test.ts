import net, { type AddressInfo } from 'node:net'
import { setTimeout as wait } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'

const { app, people } = await testApp({ settings: { UPLOAD_LIMIT_MB: 1 } })
await app.listen({ host: '127.0.0.1', port: 0 })
const { port } = app.server.address() as AddressInfo

const EDGE = 'edge-of-a-part'
const head = `--${EDGE}\r\ncontent-disposition: form-data; name="file"; filename="a.pdf"\r\ncontent-type: application/pdf\r\n\r\n`
const foot = `\r\n--${EDGE}--\r\n`

/** Sends raw bytes on one connection and gathers what comes back. */
async function talk(
  pieces: readonly (string | Buffer)[],
  until: (heard: string) => boolean,
): Promise<string> {
  const socket = net.connect(port, '127.0.0.1')
  let heard = ''
  socket.setEncoding('utf8').on('data', (text) => {
    heard += text
  })
  socket.on('error', (fault) => {
    heard += `<${(fault as NodeJS.ErrnoException).code}>`
  })
  socket.on('end', () => {
    heard += '<END>'
  })
  for (const piece of pieces) {
    if (/<E/.test(heard)) break
    if (!socket.write(piece))
      await Promise.race([new Promise((resolve) => socket.once('drain', resolve)), wait(200)])
    await wait(10)
  }
  for (let tries = 0; tries < 100 && !until(heard) && !socket.destroyed; tries++) await wait(50)
  socket.destroy()
  return heard
}

const upload = (bytes: number) =>
  `POST /v1/counties/quillback/documents HTTP/1.1\r\nhost: here\r\nauthorization: Bearer ${people.reviewer.token}\r\n` +
  `content-type: multipart/form-data; boundary=${EDGE}\r\ncontent-length: ${head.length + bytes + foot.length}\r\n\r\n`
const LIVE = 'GET /health/live HTTP/1.1\r\nhost: here\r\n\r\n'

test.each([
  ['has no part', 'boundary=edge', 'nothing'],
  ['is cut in a head', 'boundary=edge', '--edge\r\ncontent-disposition: form-'],
  ['is cut in a file', `boundary=${EDGE}`, `${head}%PDF-1.7`],
  ['names no boundary', '', `${head}%PDF-1.7${foot}`],
  ['names one that is too long', `boundary=${'e'.repeat(300)}`, `${head}%PDF-1.7${foot}`],
])('a form that %s is unreadable, and no fault of the service', async (_, parameter, payload) => {
  for (const path of ['documents', 'imports']) {
    const answer = await app.inject({
      method: 'POST',
      url: `/v1/counties/quillback/${path}`,
      headers: {
        authorization: `Bearer ${people.reviewer.token}`,
        'content-type': `multipart/form-data; ${parameter}`,
      },
      payload,
    })
    expect([answer.statusCode, answer.json().type]).toEqual([400, '/problems/unreadable-request'])
  }
})

test('an upload that is refused by its first bytes is answered, and the next request on the connection too', async () => {
  const body = Buffer.alloc(900_000, 'no paper at all ')
  const heard = await talk(
    [upload(body.length), head, body.subarray(0, 300_000), body.subarray(300_000), foot, LIVE],
    (it) => it.includes('{"state":"ok"}'),
  )
  expect(heard).toMatch(/^HTTP\/1\.1 422 /)
  expect(heard).toMatch(/HTTP\/1\.1 200 OK[\s\S]*\{"state":"ok"\}/)
})

test('one that turns out too large is answered at its end, and the next request too', async () => {
  const heard = await talk([upload(1_200_000), head, '%PDF-1.7', Buffer.alloc(1_199_992), foot, LIVE], (it) =>
    it.includes('{"state":"ok"}'),
  )
  expect(heard).toMatch(/^HTTP\/1\.1 413 [\s\S]*HTTP\/1\.1 200 OK/)
})

test('one that says it is huge is refused unread, and cut when it comes all the same', async () => {
  const pieces = Array.from({ length: 60 }, () => Buffer.alloc(200_000))
  const heard = await talk([upload(80_000_000), head, '%PDF-1.7', ...pieces], (it) => /<E/.test(it))
  expect(heard).toMatch(/^HTTP\/1\.1 413 [\s\S]*<E(ND|CONNRESET|PIPE)>/)
})
