import { describe, expect, test } from 'vitest'
import { buildApp } from '../../../src/http/app.ts'
import { USUAL_QUOTAS } from '../../../src/operations/quotas.ts'
import { testApp } from '../../support/app.ts'
import { pictureWith } from '../../support/pictures.ts'
import { inspectionThatAgrees, newParcel } from '../../support/quillback.ts'

const { services, people } = await testApp()
const app = await buildApp({
  ...services,
  quotas: { ...USUAL_QUOTAS, drafts: 2, subscriptions: 1, tokens: 3, photos: 1, imports: 1, uploadMb: 1 },
})
const here = '/v1/counties/quillback'
const [one, two, three] = [await newParcel(services), await newParcel(services), await newParcel(services)]

async function post(who: 'firm' | 'rival' | 'agent' | 'reviewer', url: string, payload: object | FormData) {
  const form = payload instanceof FormData ? new Response(payload) : undefined
  const answer = await app.inject({
    method: 'POST',
    url: `${here}${url}`,
    headers: {
      authorization: `Bearer ${people[who].token}`,
      ...(form ? { 'content-type': form.headers.get('content-type')! } : {}),
    },
    payload: form ? Buffer.from(await form.arrayBuffer()) : payload,
  })
  const wait = Number(answer.headers['retry-after'] ?? 0)
  return { status: answer.statusCode, body: answer.json(), wait }
}
const file = (field: string, bytes: Uint8Array, name: string, over: Record<string, string> = {}) => {
  const form = new FormData()
  for (const [key, value] of Object.entries(over)) form.set(key, value)
  form.set(field, new Blob([new Uint8Array(bytes)]), name)
  return form
}
const met = (says: RegExp) => ({
  status: 429,
  wait: 3_600,
  body: { type: '/problems/quota-reached', detail: expect.stringMatching(says) },
})

describe('an organization that has as much as it may', () => {
  test('of drafts is told so, and another is not', async () => {
    const draft = (who: 'firm' | 'rival', number: string) =>
      post(who, `/parcels/${number}/findings`, inspectionThatAgrees)
    expect((await draft('firm', one.number)).status).toBe(201)
    const second = await draft('firm', two.number)
    expect(second.status).toBe(201)
    expect(await draft('firm', three.number)).toMatchObject(met(/2 open drafts.* Submit some first/))
    expect((await draft('rival', three.number)).status).toBe(201)
    // One that is submitted makes room.
    await post('firm', `/findings/${second.body.id}/submission`, {})
    expect((await draft('firm', three.number)).status).toBe(201)
  })

  test('of photos a day', async () => {
    const { body } = await post('rival', `/parcels/${one.number}/findings`, inspectionThatAgrees)
    const photo = async (taken: string) =>
      post(
        'rival',
        `/findings/${body.id}/photos`,
        file('photo', await pictureWith({ taken }), 'a.jpg', { keepPlace: 'true' }),
      )
    expect((await photo('2026:10:12 09:14:03')).status).toBe(201)
    expect(await photo('2026:10:12 09:14:04')).toMatchObject(met(/1 photos today.* tomorrow/))
    // The same picture again is the same photo, and no other.
    expect((await photo('2026:10:12 09:14:03')).status).toBe(201)
  })

  test('of subscriptions, and of tokens', async () => {
    const { subscribe } = await import('../../../src/operations/subscriptions/subscribe.ts')
    const { issueToken } = await import('../../../src/operations/access/issue-token.ts')
    const context = { ...services, quotas: { ...USUAL_QUOTAS, subscriptions: 1, tokens: 2 } }
    const { vault } = services.door
    const ask = () => subscribe(context, people.agent, { address: null, parcel: one.number }, { vault })
    expect((await ask()).ok).toBe(true)
    expect(await ask()).toMatchObject({
      ok: false,
      error: { why: 'quota', says: expect.stringMatching(/1 subscriptions/) },
    })
    const asker = {
      ...people.agent,
      administers: false,
      counties: ['quillback'],
      writes: [],
      bySession: false,
    }
    const token = { account: 'own', name: 'x', scopes: [], manages: false, days: 1 }
    // One is there already: what the tests ask with.
    expect((await issueToken(context, asker, token)).ok).toBe(true)
    expect(await issueToken(context, asker, token)).toMatchObject({ ok: false, error: { why: 'quota' } })
  })

  test('of files to import, by number and by size', async () => {
    const large = Buffer.from(`number\n${'07-0412-0031\n'.repeat(100_000)}`)
    const small = Buffer.from('number\n07-0412-0031\n')
    const form = (bytes: Buffer) => file('file', bytes, 'a.csv', { kind: 'parcels' })
    expect(await post('reviewer', '/imports', form(large))).toMatchObject(met(/1 MB a day/))
    expect((await post('reviewer', '/imports', form(small))).status).toBe(201)
    expect(await post('reviewer', '/imports', form(small))).toMatchObject(met(/1 import files today/))
  })

  test('is counted for whoever watches', async () => {
    const figures = (await app.inject('/metrics')).body
    expect(figures).toMatch(/asfound_quotas_met_total\{what="drafts"\} [1-9]/)
  })
})
