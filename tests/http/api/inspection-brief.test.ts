import { expect, test } from 'vitest'
import { permitExample } from '../../../src/http/api/shapes/entries.ts'
import { testApp } from '../../support/app.ts'
import { newParcel } from '../../support/quillback.ts'

const { services, ask } = await testApp()
await newParcel(services, '07-0412-0032')
const at = '/v1/counties/quillback/parcels/07-0412-0032'
await ask('reviewer', { method: 'POST', url: `${at}/permits`, body: permitExample })

test('a firm gets the brief of a parcel, an agent nothing at all', async () => {
  const { status, body } = await ask('firm', { url: `${at}/inspection-brief` })
  expect(status).toBe(200)
  expect(body.parcel.number).toBe('07-0412-0032')
  expect(body.brief.recorded).toContainEqual(
    expect.objectContaining({ what: 'capacity', says: '1,000 gal', sureness: 'confirmed' }),
  )
  expect(body.brief.whereToLook.svg).toMatch(/^<svg/)
  expect(body.brief.measurements[0].settles.length).toBeGreaterThan(0)
  expect(body.brief.cautions.length).toBeGreaterThan(5)
  expect((await ask('agent', { url: `${at}/inspection-brief` })).status).toBe(404)
})
