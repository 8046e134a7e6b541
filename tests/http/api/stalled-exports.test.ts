import { once } from 'node:events'
import net from 'node:net'
import { PassThrough, Readable } from 'node:stream'
import { sql } from 'kysely'
import { afterAll, describe, expect, onTestFinished, test, vi } from 'vitest'
import { paced } from '../../../src/http/api/exports/pace.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

const { app, services, people } = await testApp({ settings: { ANSWERS: 'fast' } })
const origin = await app.listen({ host: '127.0.0.1', port: 0 })
const sockets: net.Socket[] = []
afterAll(() => {
  for (const socket of sockets) socket.destroy()
})

// More than the buffers between the database and a reader take.
await administer(services.database, (tx) =>
  sql`insert into parcel (county, id, number, address)
    select 'quillback', gen_random_uuid(), 'X' || n, repeat(md5(n::text), 40) from generate_series(1, 16000) n`.execute(
    tx,
  ),
)

const PATH = '/v1/counties/quillback/exports/parcels.ndjson'
/** Asks for an export and reads the head of the answer, and no more. */
async function stalledReader(token: string): Promise<number> {
  const { port } = new URL(origin)
  const socket = net.connect(Number(port), '127.0.0.1')
  sockets.push(socket)
  await once(socket, 'connect')
  socket.write(`GET ${PATH} HTTP/1.1\r\nhost: x\r\nauthorization: Bearer ${token}\r\n\r\n`)
  const [head] = (await once(socket, 'data')) as [Buffer]
  socket.pause()
  return Number(/^HTTP\/1\.1 (\d+)/.exec(head.toString())?.[1])
}
const ask = (token: string) => fetch(`${origin}${PATH}`, { headers: { authorization: `Bearer ${token}` } })

describe('readers who take nothing', () => {
  test('keep neither another organization from its exports nor themselves in the dark', async () => {
    const { token } = people.reviewer
    expect(await stalledReader(token)).toBe(200)
    expect(await stalledReader(token)).toBe(200)
    const third = await ask(token)
    expect(third.status).toBe(429)
    expect(third.headers.get('retry-after')).toBe('30')
    expect(await third.json()).toMatchObject({
      type: '/problems/too-many-requests',
      detail: expect.stringContaining('Your organization has 2 exports under way'),
    })
    const firms = await fetch(`${origin}/v1/counties/quillback/exports/discrepancies.csv`, {
      headers: { authorization: `Bearer ${people.firm.token}` },
    })
    expect(firms.status).toBe(200)
    await firms.text()
    sockets.shift()!.destroy()
    // The place is free as soon as the reader is gone.
    await expect.poll(async () => (await ask(token)).status, { timeout: 5_000 }).toBe(200)
  })

  test('are cut when they have taken nothing for too long, and the rows with them', async () => {
    const rows = Readable.from(
      (function* () {
        for (;;) yield Buffer.alloc(16_384)
      })(),
      { objectMode: false },
    )
    const out = paced(rows, { stallMs: 100, graceMs: 60_000, leastBytesPerSecond: 1 })
    out.read(1)
    const [fault] = await once(out, 'error')
    expect(String(fault)).toMatch(/takes nothing/)
    expect(rows.destroyed).toBe(true)
  })

  test('are cut when they take it drop by drop', async () => {
    const rows = new PassThrough()
    const out = paced(rows, { stallMs: 400, graceMs: 200, leastBytesPerSecond: 1_000_000 })
    const feeding = setInterval(() => rows.write(Buffer.alloc(65_536)), 5)
    const sipping = setInterval(() => out.read(1), 20)
    const cut = once(out, 'error')
    await cut
    clearInterval(feeding)
    clearInterval(sipping)
    expect(out.destroyed).toBe(true)
  })

  test('who read on are not hurried, however long the database takes', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'performance'] })
    onTestFinished(() => void vi.useRealTimers())
    const rows = new PassThrough()
    const out = paced(rows, { stallMs: 50, graceMs: 50, leastBytesPerSecond: 1_000_000 })
    let got = 0
    out.on('data', (chunk: Buffer) => {
      got += chunk.length
    })
    rows.write(Buffer.alloc(10))
    await vi.advanceTimersByTimeAsync(60 * 60_000)
    expect(out.destroyed).toBe(false)
    rows.end(Buffer.alloc(10))
    await once(out, 'end')
    expect(got).toBe(20)
  })
})
