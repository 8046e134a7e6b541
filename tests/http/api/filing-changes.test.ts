import { beforeEach, describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'
import { inspectionThatDiffers, newParcel, permit1974 } from '../../support/quillback.ts'

const { services, app, people, ask } = await testApp()
const here = '/v1/counties/quillback'
const WORDS = 'The clerk transposed two digits'

type Who = 'reviewer' | 'firm' | 'agent'
const get = async (url: string, who: Who = 'reviewer') => (await ask(who, { url: `${here}${url}` })).body
const enter = async (parcel: string, more: object = {}) =>
  (
    await ask('reviewer', {
      method: 'POST',
      url: `${here}/parcels/${parcel}/permits`,
      body: { ...permit1974, ...more },
    })
  ).body.permit as { id: string; revision: number }
const change = (id: string, body: object, version: number | null = null, more: object = {}) =>
  ask('reviewer', {
    method: 'POST',
    url: `${here}/permits/${id}/filing-changes`,
    body,
    headers: { 'if-match': version === null ? '*' : `"r${version}"`, ...more },
  })
const componentsOf = async (parcel: string) =>
  (await get(`/parcels/${parcel}/as-built`)).asBuilt.components.length as number
const inspect = async (parcel: string) => {
  const draft = await ask('firm', {
    method: 'POST',
    url: `${here}/parcels/${parcel}/findings`,
    body: inspectionThatDiffers,
  })
  const sent = await ask('firm', { method: 'POST', url: `${here}/findings/${draft.body.id}/submission` })
  expect(sent.status).toBe(200)
}

let [from, to] = ['', '']
let permit: { id: string; revision: number }
beforeEach(async () => {
  from = (await newParcel(services)).number
  to = (await newParcel(services)).number
  permit = await enter(from)
})

describe('a permit on the wrong parcel', () => {
  test('is moved: both as-builts, both statuses, both files and its history follow; moving it back undoes it', async () => {
    await inspect(from)
    expect((await get(`/parcels/${from}/status`)).status.word).toBe('under-review')
    const moved = await change(
      permit.id,
      { act: 'move', toParcel: to, reason: 'parcel-misread', note: WORDS },
      1,
    )
    expect(moved.status).toBe(201)
    expect(moved.headers.etag).toBe('"r2"')
    expect(
      moved.body.consequences.map(({ status }: { status: { word: string } }) => status.word).sort(),
    ).toEqual(['no-record', 'not-inspected'])
    expect([await componentsOf(from), await componentsOf(to)]).toEqual([0, 3])
    expect((await get(`/parcels/${from}/status`)).status.word).toBe('no-record')
    const file = await get(`/parcels/${from}`)
    expect(file.permits).toEqual([])
    expect(file.permitsElsewhere).toMatchObject([{ id: permit.id, parcelNumber: to, standing: 'in-file' }])
    const read = await get(`/permits/${permit.id}`)
    expect(read.filingChanges).toMatchObject([
      { act: 'move', reason: 'parcel-misread', note: WORDS, revision: 2 },
    ])
    expect(read.revisions).toHaveLength(2)

    expect(
      (await change(permit.id, { act: 'move', toParcel: from, reason: 'moved-in-error' }, 2)).status,
    ).toBe(201)
    expect([await componentsOf(from), await componentsOf(to)]).toEqual([3, 0])
    expect((await get(`/parcels/${from}/status`)).status.word).toBe('under-review')
    expect((await get(`/parcels/${from}`)).permitsElsewhere).toEqual([])
    expect((await get(`/permits/${permit.id}`)).filingChanges).toHaveLength(2)
  })

  test('leaves decisions that stood on it where they are, and says which', async () => {
    await inspect(from)
    const [difference] = (await get(`/discrepancies?parcel=${from}`)).items
    const decided = await ask('reviewer', {
      method: 'POST',
      url: `${here}/discrepancies/${difference.id}/decisions`,
      body: { action: 'accept', reason: 'Seen on site.' },
      headers: { 'if-match': '*' },
    })
    expect(decided.status).toBe(201)
    const { body } = await change(permit.id, { act: 'move', toParcel: to, reason: 'parcel-misread' })
    expect(body.affectedDecisions).toMatchObject([
      { decision: decided.body.decision.id, discrepancy: difference.id, because: 'difference-changed' },
    ])
    const after = await get(`/discrepancies/${difference.id}`)
    expect(after.decisions).toHaveLength(1)
    expect(after.decisions[0].supersededBy).toBeNull()
  })

  test('a letter issued before is superseded, and whoever checks it is told that a permit changed', async () => {
    const { body: letter } = await ask('reviewer', {
      method: 'POST',
      url: `${here}/parcels/${from}/letters`,
      body: { kind: 'status' },
    })
    const check = async () => (await ask('nobody', { url: `/v1/letters/${letter.code}/verification` })).body
    expect((await check()).state).toBe('valid')
    await change(permit.id, { act: 'void', reason: 'never-built' })
    expect(await check()).toMatchObject({
      state: 'superseded',
      since: expect.arrayContaining(['permit', 'status']),
    })
  })
})

describe('a void permit', () => {
  test('builds nothing, is corrected by nobody, is marked in exports, and can be restored', async () => {
    expect((await change(permit.id, { act: 'void', reason: 'other', note: WORDS })).status).toBe(201)
    expect(await componentsOf(from)).toBe(0)
    expect((await get(`/parcels/${from}/status`)).status.word).toBe('no-record')
    const corrected = await ask('reviewer', {
      method: 'PUT',
      url: `${here}/permits/${permit.id}`,
      body: { record: permit1974, reason: 'again' },
      headers: { 'if-match': '*' },
    })
    expect(corrected).toMatchObject({ status: 409, body: { detail: expect.stringContaining('void') } })
    const exported = await app.inject({
      url: `${here}/exports/permits.ndjson`,
      headers: { authorization: `Bearer ${people.reviewer.token}` },
    })
    const line = exported.body.split('\n').find((it) => it.includes(permit.id))!
    expect(JSON.parse(line)).toMatchObject({ standing: 'void', mergedInto: null })
    expect((await change(permit.id, { act: 'restore', reason: 'voided-in-error' })).status).toBe(201)
    expect(await componentsOf(from)).toBe(3)
  })

  test('is not restored beside one of the same number that took its place', async () => {
    await change(permit.id, { act: 'void', reason: 'entered-in-error' })
    await enter(from)
    const refused = await change(permit.id, { act: 'restore', reason: 'voided-in-error' })
    expect(refused).toMatchObject({ status: 409, body: { detail: expect.stringContaining('merge them') } })
  })
})

describe('two scans of one permit', () => {
  test('are merged: one stays, the other leads to it, and they can be separated', async () => {
    const second = await enter(to, { number: '74 118' })
    expect((await change(second.id, { act: 'merge', into: permit.id, reason: 'scanned-twice' })).status).toBe(
      201,
    )
    expect([await componentsOf(from), await componentsOf(to)]).toEqual([3, 0])
    const old = await ask('reviewer', { url: `${here}/permits/${second.id}` })
    expect(old.body.permit).toMatchObject({ standing: 'merged', mergedInto: permit.id })
    expect(old.headers.link).toBe(`<${here}/permits/${permit.id}>; rel="canonical"`)
    expect((await get(`/permits/${permit.id}`)).holds).toEqual([second.id])
    expect((await change(second.id, { act: 'separate', reason: 'two-permits-after-all' })).status).toBe(201)
    expect(await componentsOf(to)).toBe(3)
    expect((await get(`/permits/${second.id}`)).filingChanges.map(({ act }: { act: string }) => act)).toEqual(
      ['merge', 'separate'],
    )
  })
})

describe('what cannot be is refused, with what to do', () => {
  const cases: readonly (readonly [string, () => object, number, RegExp])[] = [
    ['to the same parcel', () => ({ act: 'move', toParcel: from, reason: 'parcel-misread' }), 422, /already/],
    [
      'to no parcel of the county',
      () => ({ act: 'move', toParcel: '99-9999-9999', reason: 'parcel-misread' }),
      422,
      /no parcel/,
    ],
    [
      'into itself',
      () => ({ act: 'merge', into: permit.id, reason: 'scanned-twice' }),
      422,
      /this very permit/,
    ],
    [
      'into no permit',
      () => ({ act: 'merge', into: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11', reason: 'scanned-twice' }),
      422,
      /no permit/,
    ],
    ['for another act’s reason', () => ({ act: 'void', reason: 'scanned-twice' }), 422, /reason/],
    ['for another reason without words', () => ({ act: 'void', reason: 'other' }), 422, /own words/],
    [
      'restored though it is not void',
      () => ({ act: 'restore', reason: 'voided-in-error' }),
      409,
      /not void/,
    ],
    [
      'separated though it is not merged',
      () => ({ act: 'separate', reason: 'merged-in-error' }),
      409,
      /not merged/,
    ],
  ]
  test.each(cases)('%s', async (_, body, status, says) => {
    const refused = await change(permit.id, body())
    expect(refused.status).toBe(status)
    expect(JSON.stringify(refused.body)).toMatch(says)
    expect((await get(`/permits/${permit.id}`)).permit.revision).toBe(1)
  })

  test('a void one again, or moved', async () => {
    await change(permit.id, { act: 'void', reason: 'expired' })
    for (const body of [
      { act: 'void', reason: 'expired' },
      { act: 'move', toParcel: to, reason: 'parcel-misread' },
    ])
      expect((await change(permit.id, body)).status).toBe(409)
  })

  test('unread or read too early', async () => {
    const body = { act: 'void', reason: 'expired' }
    const url = `${here}/permits/${permit.id}/filing-changes`
    expect((await ask('reviewer', { method: 'POST', url, body })).status).toBe(428)
    expect((await change(permit.id, body, 7)).status).toBe(412)
    expect((await ask('firm', { method: 'POST', url, body, headers: { 'if-match': '*' } })).status).toBe(403)
    expect((await ask('agent', { method: 'POST', url, body, headers: { 'if-match': '*' } })).status).toBe(403)
  })

  test('the same request twice is done once', async () => {
    const key = { 'idempotency-key': `void-${permit.id}` }
    const body = { act: 'void', reason: 'expired' }
    const [first, second] = [await change(permit.id, body, 1, key), await change(permit.id, body, 1, key)]
    expect(second.headers['idempotency-replayed']).toBe('true')
    expect(second.body).toEqual(first.body)
  })
})

test('a firm reads what became of a permit, and never the words about it', async () => {
  await change(permit.id, { act: 'move', toParcel: to, reason: 'other', note: WORDS })
  const read = await get(`/permits/${permit.id}`, 'firm')
  expect(read.filingChanges).toMatchObject([{ act: 'move', note: null }])
  for (const url of [`/permits/${permit.id}`, `/parcels/${from}`, `/parcels/${to}`])
    expect(JSON.stringify(await get(url, 'firm'))).not.toContain(WORDS)
})
