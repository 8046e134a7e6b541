import { describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'
import { newParcel } from '../../support/quillback.ts'
import { longestStall } from '../../support/stalls.ts'

const { services, ask } = await testApp()
const parcel = await newParcel(services)
const at = `/v1/counties/quillback/parcels/${parcel.number}`
const send = (body: object | string) =>
  ask('firm', {
    method: 'POST',
    url: `${at}/findings`,
    payload: body,
    headers: { 'content-type': 'application/json' },
  })

describe('a body that is mostly wrong', () => {
  test('is answered with some of its faults, and how many there are', async () => {
    const body = Object.fromEntries(Array.from({ length: 15_000 }, (_, index) => [`unknown-${index}`, index]))
    const { status, body: told } = await send(body)
    expect(status).toBe(422)
    expect(told.errors).toHaveLength(100)
    expect(told.detail).toMatch(/^These are 100 of 15\d\d\d faults\.$/)
    expect(JSON.stringify(told).length).toBeLessThan(20_000)
  })

  test('with names as long as books is answered in short', async () => {
    const { status, body: told } = await send({ ['x'.repeat(900_000)]: 1 })
    expect(status).toBe(422)
    expect(JSON.stringify(told).length).toBeLessThan(5_000)
  })

  test.each([
    ['lists in lists', `[${'[],'.repeat(300_000)}[]]`],
    ['names', `{${Array.from({ length: 70_000 }, (_, index) => `"u${index}":0`).join(',')}}`],
  ])('of more values than anything has (%s) is refused before it is looked into', async (_, body) => {
    const stall = await longestStall(async () => {
      expect(await send(body)).toMatchObject({ status: 413, body: { type: '/problems/too-large' } })
    })
    expect(stall).toBeLessThan(200)
  })
})
