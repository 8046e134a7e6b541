import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { testApp } from '../../support/app.ts'
import type { People } from '../../support/people.ts'
import { newParcel, permit1974, permitRecord } from '../../support/quillback.ts'

const { app, services, people, ask } = await testApp()
const here = '/counties/quillback'
const HOOK = 'https://93.184.216.34/hook'

const page = (who: keyof People, url: string, form?: Readonly<Record<string, string>>) =>
  app.inject({
    method: form ? 'POST' : 'GET',
    url,
    headers: {
      accept: 'text/html',
      authorization: `Bearer ${people[who].token}`,
      ...(form ? { 'content-type': 'application/x-www-form-urlencoded' } : {}),
    },
    ...(form ? { payload: new URLSearchParams(form).toString() } : {}),
  })
const listed = async () =>
  (await ask('agent', { url: '/v1/counties/quillback/subscriptions' })).body.items as {
    id: string
    address: string
    parcel: string
    endedAt: string | null
  }[]

describe('an agent on a parcel’s page', async () => {
  const parcel = await newParcel(services)
  const at = `${here}/parcels/${parcel.number}`

  test('asks to be told, is given the key once, and nothing keeps the page', async () => {
    expect((await page('agent', at)).body).toContain('Get notified when the status changes')
    const made = await page('agent', `${at}/subscriptions`, { address: ` ${HOOK} ` })
    expect([made.statusCode, made.headers['cache-control']]).toEqual([200, 'no-store'])
    expect(made.body).toMatch(/<code>whsec_[A-Za-z0-9+/]{43}=<\/code>/)
    expect(await listed()).toMatchObject([{ address: HOOK, parcel: parcel.number, endedAt: null }])
    const later = (await page('agent', at)).body
    expect(later).toContain(HOOK)
    expect(later).not.toContain('whsec_')
  })

  test('pressed twice makes one', async () => {
    const again = await page('agent', `${at}/subscriptions`, { address: HOOK })
    expect(again.statusCode).toBe(409)
    expect(again.body).toContain('Notifications already go to this address.')
    expect(await listed()).toHaveLength(1)
  })

  test.each([
    ['http://93.184.216.34/', 'The address must begin with https://.'],
    ['https://127.0.0.1/', 'The address leads to this machine, its network or a reserved address'],
    ['nonsense"><script>x', 'The address is not a valid address'],
    ['', 'The address'],
  ])('%j comes back with what is wrong beside it', async (address, says) => {
    const back = await page('agent', `${at}/subscriptions`, { address })
    expect(back.statusCode).toBe(422)
    expect(back.body).toContain(`<p class="fault" id="address-fault" role="alert">${says}`)
    expect(back.body).toContain('aria-describedby="address-fault address-help" aria-invalid="true"')
    expect(back.body).toContain(
      `value="${address.replace('">', '&quot;&gt;').replace('<', '&lt;').replace('t>x', 't&gt;x')}"`,
    )
    expect(back.body).not.toContain('<script>x')
    expect(await listed()).toHaveLength(1)
  })

  test('ends it where it stands; another office neither sees nor ends it', async () => {
    const id = (await listed())[0]?.id
    const end = `${here}/subscriptions/${id}/end`
    expect((await page('agent', at)).body).toContain(`action="${end}"`)
    for (const other of ['firm', 'reviewer', 'stranger'] as const) {
      expect((await page(other, end, {})).statusCode, other).toBeGreaterThanOrEqual(403)
    }
    const ended = await page('agent', end, {})
    expect([ended.statusCode, ended.headers.location]).toEqual([303, `${at}#notifications`])
    expect((await page('agent', at)).body).not.toContain(HOOK)
    expect(await listed()).toMatchObject([{ id, endedAt: expect.any(String) }])
  })

  test('asks to be told here, pressed twice makes one, and what changed is listed for the office alone', async () => {
    const other = await newParcel(services)
    const there = `${here}/parcels/${other.number}`
    for (const _ of [1, 2]) {
      const made = await page('agent', `${there}/subscriptions`, { here: 'yes' })
      expect([made.statusCode, made.headers.location]).toEqual([303, `${there}#notifications`])
    }
    expect((await listed()).filter(({ parcel: of }) => of === other.number)).toMatchObject([
      { address: null },
    ])
    expect((await page('agent', there)).body).toContain('Stop notifications')
    expect((await page('agent', `${here}/changes`)).body).toContain('No changes yet.')
    must(await enterPermit(services, people.reviewer, other.number, permitRecord(permit1974)))
    const told = (await page('agent', `${here}/changes`)).body
    expect(told).toContain(other.number)
    expect(told).toContain('First status')
    for (const who of ['firm', 'reviewer', 'stranger'] as const) {
      expect((await page(who, `${here}/changes`)).statusCode, who).toBe(404)
    }
  })

  test('is the only one that the page asks', async () => {
    for (const other of ['firm', 'reviewer'] as const) {
      expect((await page(other, at)).body).not.toContain('Get notified when the status changes')
    }
  })
})
