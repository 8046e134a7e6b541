import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { addParcel } from '../../../src/operations/parcels/add-parcel.ts'
import { pattern } from '../../../src/operations/patterns/find-patterns.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { testApp } from '../../support/app.ts'
import { COUNTY } from '../../support/people.ts'
import {
  inspectionThatAgrees,
  inspectionThatDiffers,
  permit1974,
  permitRecord,
} from '../../support/quillback.ts'

const { services, people, ask } = await testApp()
const here = `/v1/counties/${COUNTY}`

let count = 0
async function inspected(street: string, year: number, inspection: object) {
  count += 1
  const number = `07-0500-${1000 + count}`
  must(
    await addParcel(services, serviceIn(COUNTY), {
      number,
      address: `${count} ${street}`,
      retiredOn: null,
      oldNumbers: [],
    }),
  )
  const permit = permitRecord({
    ...permit1974,
    number: `P-${count}`,
    issuedOn: `${year}-05-03`,
    approvedOn: `${year}-06-20`,
  })
  must(await enterPermit(services, people.reviewer, number, permit))
  const draft = (
    await ask('firm', { method: 'POST', url: `${here}/parcels/${number}/findings`, body: inspection })
  ).body
  await ask('firm', { method: 'POST', url: `${here}/findings/${draft.id}/submission` })
}

describe('a county in which one street has its lines replaced and one decade its tanks too small', async () => {
  for (let n = 0; n < 6; n++) {
    await inspected('Tern Lane', 1974, inspectionThatDiffers)
    await inspected('Heron Road', 1985, inspectionThatAgrees)
  }
  await inspected('Short Street', 1985, inspectionThatAgrees)
  const { status, body } = await ask('reviewer', { url: `${here}/patterns` })
  const rowsOf = (name: string) => body.patterns.find((it: { name: string }) => it.name === name)

  test('says so with its counts, the test, and what it is held against', () => {
    expect(status).toBe(200)
    // By hand: 1 / C(13, 6) for all six hits in one group of six, and nothing as rare on the other side.
    const decades = rowsOf('shortfalls-by-decade')
    expect(decades.rows[0]).toMatchObject({
      group: '1970s',
      hits: 6,
      total: 6,
      elsewhereHits: 0,
      elsewhereTotal: 7,
    })
    expect(decades.rows[0].probability).toBeCloseTo(1 / 1716, 9)
    expect(decades.rows[0].adjusted).toBeCloseTo(2 / 1716, 9)
    const streets = rowsOf('unrecorded-work-by-street')
    expect(streets.rows.map(({ group }: { group: string }) => group)).toEqual(['tern lane', 'heron road'])
  })

  test('hides a street on which too few were inspected, and counts it among the others', () => {
    const streets = rowsOf('unrecorded-work-by-street')
    expect(streets.tooFew).toBe(1)
    expect(streets.rows[0].elsewhereTotal).toBe(7)
    expect(JSON.stringify(body)).not.toContain('short street')
  })

  test('names nobody, and cautions', () => {
    for (const name of ['Heron Inspections', 'desk', people.firm.account])
      expect(JSON.stringify(body)).not.toContain(name)
    for (const it of body.patterns) expect(it.cautions.join(' ')).toMatch(/not a random sample/)
  })

  test('is for reviewers', async () => {
    for (const who of ['firm', 'agent', 'stranger'] as const)
      expect((await ask(who, { url: `${here}/patterns` })).status).toBe(404)
  })
})

test('nothing counted gives nothing said', () => {
  expect(pattern('misreads-by-form', '', '', [])).toMatchObject({ rows: [], tooFew: 0 })
  const [row] = pattern('misreads-by-form', '', '', [{ name: 'one', hits: 3, total: 9 }]).rows
  expect(row).toMatchObject({ elsewhereTotal: 0, probability: 1 })
})
