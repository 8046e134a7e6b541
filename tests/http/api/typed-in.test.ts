import { describe, expect, test } from 'vitest'
import { permitExample } from '../../../src/http/api/shapes/entries.ts'
import { testApp } from '../../support/app.ts'
import { inspectionThatAgrees, newParcel, permit1974 } from '../../support/quillback.ts'

const { services, ask } = await testApp()
const here = '/v1/counties/quillback'
const post = (who: 'reviewer' | 'firm', url: string, body?: object) =>
  ask(who, { method: 'POST', url, ...(body ? { body } : {}) })
const parcel = async () => `${here}/parcels/${(await newParcel(services)).number}`

describe('a permit of a number that another parcel has', () => {
  test('is told at entry and at correction, in whatever writing', async () => {
    const [one, other] = [await parcel(), await parcel()]
    const first = await post('reviewer', `${one}/permits`, { ...permitExample, number: '66-77x' })
    expect(first.body.suspectedDuplicates).toEqual([])
    const second = await post('reviewer', `${other}/permits`, { ...permitExample, number: '#66 77-X' })
    expect(second.status).toBe(201)
    expect(second.body.suspectedDuplicates).toMatchObject([
      { id: first.body.permit.id, number: '66-77x', parcelNumber: one.split('/').at(-1) },
    ])
    const corrected = await ask('reviewer', {
      method: 'PUT',
      url: `${here}/permits/${first.body.permit.id}`,
      headers: { 'if-match': first.headers.etag as string },
      body: { record: { ...permitExample, number: '66-77x', bedrooms: 4 }, reason: 'The 3 is a 4.' },
    })
    expect(corrected.body.suspectedDuplicates).toMatchObject([{ id: second.body.permit.id }])
  })
})

test('a date of the month or the year is stored and answered as far as it is known', async () => {
  const at = await parcel()
  const entered = await post('reviewer', `${at}/permits`, {
    ...permitExample,
    number: '77-1',
    issuedOn: "Sept. '77",
    approvedOn: '1977',
  })
  expect(entered.body.permit.record).toMatchObject({ issuedOn: '1977-09', approvedOn: '1977' })
  const read = await ask('reviewer', { url: `${here}/permits/${entered.body.permit.id}` })
  expect(read.body.permit.entry).toMatchObject({ issuedOn: '1977-09', approvedOn: '1977' })
})

test('a key that is not on record is refused at submission, with those that are', async () => {
  const at = await parcel()
  const { permit } = (await post('reviewer', `${at}/permits`, permit1974)).body
  const [first, ...others] = inspectionThatAgrees.components!
  const draft = await post('firm', `${at}/findings`, {
    ...inspectionThatAgrees,
    components: [{ ...first!, key: 'nothing/tank' }, ...others],
  })
  const sent = await post('firm', `${here}/findings/${draft.body.id}/submission`)
  expect(sent.status).toBe(422)
  const fault = sent.body.errors.find(({ pointer }: { pointer: string }) => pointer === '/components/0/key')
  expect(fault.message).toContain(`"nothing/tank" is not on record`)
  expect(fault.message).toContain(permit.id)
})
