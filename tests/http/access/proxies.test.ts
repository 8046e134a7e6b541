import { describe, expect, test } from 'vitest'
import { readSettings } from '../../../src/config.ts'
import { MISSES_IN_ALL, MISSES_PER_MINUTE } from '../../../src/http/plugins/guesses.ts'
import { testApp } from '../../support/app.ts'

const behind = async (trusted: string) => {
  const settings = readSettings({ TRUST_PROXY: trusted })
  if (!settings.ok) throw new Error(settings.error.join())
  const { TRUST_PROXY } = settings.value
  // Each test begins with nothing counted.
  return (await testApp({ settings: { TRUST_PROXY, ANSWERS: 'fast' } })).app
}
type App = Awaited<ReturnType<typeof behind>>

/** A code whose last sign fits and that no letter has. */
const CODE = 'H7KQ3MXR9CWT4FJD'
const check = (app: App, forwarded: string, remoteAddress = '127.0.0.1') =>
  app.inject({
    url: `/v1/letters/${CODE}/verification`,
    headers: { 'x-forwarded-for': forwarded },
    remoteAddress,
  })
const statuses = async (app: App, froms: readonly string[], socket?: string) => {
  const all: number[] = []
  for (const from of froms) all.push((await check(app, from, socket)).statusCode)
  return all
}
const many = (count: number, of: (n: number) => string) => Array.from({ length: count }, (_, n) => of(n))

describe('where a request came from', () => {
  test('is what the proxy that is trusted saw, not what was sent to it', async () => {
    const app = await behind('1')
    // An appending proxy: the sender's claim first, then the address that the proxy saw.
    const sprayed = await statuses(
      app,
      many(MISSES_PER_MINUTE + 5, (n) => `203.0.113.${n}, 198.51.100.9`),
    )
    expect(sprayed.slice(-5)).toEqual([429, 429, 429, 429, 429])
    expect((await check(app, '203.0.113.1, 198.51.100.10')).statusCode).not.toBe(429)
  })

  test('is taken from the proxies that are named, and from nobody else', async () => {
    const app = await behind('10.0.0.0/8')
    const claims = many(MISSES_PER_MINUTE + 1, (n) => `203.0.113.${n}`)
    expect((await statuses(app, claims, '192.0.2.4')).at(-1)).toBe(429)
    expect((await statuses(app, claims, '10.1.2.3')).at(-1)).not.toBe(429)
    expect(
      (
        await statuses(
          app,
          claims.map((it) => `${it}, 198.51.100.77, 10.9.9.9`),
          '10.1.2.3',
        )
      ).at(-1),
    ).toBe(429)
  })

  test('of an IPv6 network is the network: its addresses are changed for nothing', async () => {
    const app = await behind('1')
    const from = (n: number) => `2001:db8:5:6::${(n + 1).toString(16)}`
    expect((await statuses(app, many(MISSES_PER_MINUTE + 1, from))).at(-1)).toBe(429)
    expect((await check(app, '2001:db8:5:7::1')).statusCode).not.toBe(429)
  })
})

test('codes that are guessed from everywhere at once are slowed all the same', async () => {
  const app = await behind('1')
  const from = (n: number) => `203.${n >> 8}.${n & 255}.7`
  await statuses(app, many(MISSES_IN_ALL, from))
  // Whoever asks for the first time may be holding a letter; whoever asked for one that is not there was guessing.
  expect((await check(app, '192.0.2.200')).statusCode).not.toBe(429)
  expect((await check(app, '192.0.2.200')).statusCode).toBe(429)
  expect((await check(app, from(3))).statusCode).toBe(429)
})

test('a setting that trusts nobody in particular is refused', () => {
  for (const wrong of ['on', '0', 'yes', '10.0.0.1/33', 'proxy.example', '10.0.0.1,'])
    expect(readSettings({ TRUST_PROXY: wrong })).toMatchObject({
      error: [expect.stringMatching(/^TRUST_PROXY must be off, the number of proxies/)],
    })
})
