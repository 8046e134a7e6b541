import { once } from 'node:events'
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { sql } from 'kysely'
import { describe, expect, test } from 'vitest'
import { csvCell } from '../../../src/base/csv-cell.ts'
import { must } from '../../../src/base/result.ts'
import { addParcel } from '../../../src/operations/parcels/add-parcel.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { csvText } from '../../../src/store/exports/column.ts'
import { testApp } from '../../support/app.ts'
import { COUNTY } from '../../support/people.ts'
import { inspectionThatDiffers, newParcel, permit1974 } from '../../support/quillback.ts'

const { app, services, people, ask } = await testApp()
const here = '/v1/counties/quillback'
const fix = { lat: 41.25, lon: -71.5, radiusFt: 12 }
const FORMULA = '=HYPERLINK("http://example.org","x")'

const parcel = await newParcel(services, '07-0412-0031')
must(
  await addParcel(services, serviceIn(COUNTY), {
    number: '07-0412-0032',
    address: FORMULA,
    retiredOn: null,
    oldNumbers: [{ number: '+17', kind: 'renumbered', changedOn: null, note: null }],
  }),
)
const at = `${here}/parcels/${parcel.number}`
const post = (who: 'reviewer' | 'firm', url: string, body?: object) =>
  ask(who, { method: 'POST', url, ...(body ? { body } : {}) })
await post('reviewer', `${at}/permits`, { ...permit1974, remarks: '@SUM(1), "quoted"\nsecond line' })
const inspection = structuredClone(inspectionThatDiffers)
inspection.components![0] = { ...inspection.components![0]!, fix }
const draft = (await post('firm', `${at}/findings`, inspection)).body
await post('firm', `${here}/findings/${draft.id}/submission`)

const csv = async (what: string, who: 'reviewer' | 'firm' | 'rival' = 'reviewer') => {
  const { headers, body } = await ask(who, { url: `${here}/exports/${what}` })
  expect(headers['content-type']).toBe('text/csv; charset=utf-8')
  return parse(body, { columns: true }) as Record<string, string>[]
}
const lines = async (what: string) => {
  const headers = { authorization: `Bearer ${people.reviewer.token}` }
  const { body } = await app.inject({ url: `${here}/exports/${what}.ndjson`, headers })
  return body
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>)
}

describe('parcels', () => {
  test('as CSV, in which nothing is a formula', async () => {
    const [first, second] = await csv('parcels.csv')
    expect(first).toMatchObject({ number: '07-0412-0031', status: 'under-review', oldNumbers: '' })
    expect(second).toMatchObject({ address: `'${FORMULA}`, oldNumbers: '+17', status: '' })
  })

  test('as NDJSON, in which everything is what it is', async () => {
    const [first, second] = await lines('parcels')
    expect(second).toMatchObject({
      number: '07-0412-0032',
      address: FORMULA,
      oldNumbers: ['+17'],
      status: null,
    })
    expect(first!.id).toBe(parcel.id)
  })

  test('as GeoJSON (RFC 7946): longitude first, and null where no position is known', async () => {
    const { headers, body } = await ask('reviewer', { url: `${here}/exports/parcels.geojson` })
    expect(headers['content-type']).toBe('application/geo+json')
    expect(body.type).toBe('FeatureCollection')
    expect(body.features.map((it: { type: string; geometry: unknown }) => [it.type, it.geometry])).toEqual([
      ['Feature', { type: 'Point', coordinates: [fix.lon, fix.lat] }],
      ['Feature', null],
    ])
    expect(body.features[0].properties.number).toBe('07-0412-0031')
  })
})

describe('discrepancies', () => {
  test('of a reviewer are all, of a firm its own, of another firm none', async () => {
    const all = await csv('discrepancies.csv')
    expect(all.map(({ kind }) => kind)).toContain('capacity-below-record')
    expect(await csv('discrepancies.csv', 'firm')).toEqual(all)
    expect(await csv('discrepancies.csv', 'rival')).toEqual([])
  })

  test('stand where the component was found that they are about', async () => {
    const { body } = await ask('reviewer', { url: `${here}/exports/discrepancies.geojson` })
    const placed = body.features.filter(({ geometry }: { geometry: unknown }) => geometry !== null)
    expect(placed.length).toBeGreaterThan(0)
    for (const { properties, geometry } of placed) {
      expect(properties.about).toMatch(/tank/)
      expect(geometry.coordinates).toEqual([fix.lon, fix.lat])
    }
  })
})

describe('permits', () => {
  test('keep their line breaks and quotes through CSV', async () => {
    const [only] = await csv('permits.csv')
    expect(only).toMatchObject({
      number: '74-118',
      bedrooms: '3',
      remarks: `'@SUM(1), "quoted"\nsecond line`,
    })
    expect((await lines('permits'))[0]).toMatchObject({
      remarks: '@SUM(1), "quoted"\nsecond line',
      components: 3,
    })
  })

  test('keep a date that is known to the month or the year as what is known of it', async () => {
    await newParcel(services, '07-0412-0077')
    const dated = { ...permit1974, number: '77-9', issuedOn: "Sept. '77", approvedOn: '1978' }
    await post('reviewer', `${here}/parcels/07-0412-0077/permits`, dated)
    const partial = { parcel: '07-0412-0077', issuedOn: '1977-09', approvedOn: '1978' }
    expect((await lines('permits')).find(({ number }) => number === '77-9')).toMatchObject(partial)
    expect((await csv('permits.csv')).find(({ number }) => number === '77-9')).toMatchObject(partial)
    const blds = await csv('permits.csv?fields=blds')
    expect(blds.find(({ PermitNum }) => PermitNum === '77-9')).toMatchObject({
      IssuedDate: '1977-09',
      CompletedDate: '1978',
    })
  })

  test('in the fields of BLDS have all that it requires', async () => {
    const [only] = await csv('permits.csv?fields=blds')
    // Required fields, as the specification's wiki page of 1 April 2016 lists them; dates are text, YYYY-MM-DD.
    const required =
      'PermitNum Description AppliedDate IssuedDate CompletedDate StatusCurrent OriginalAddress1 OriginalAddress2 OriginalCity OriginalState OriginalZip'
    expect(Object.keys(only!).slice(0, 11)).toEqual(required.split(' '))
    expect(only).toMatchObject({
      IssuedDate: '1974-05-03',
      CompletedDate: '1974-06-20',
      StatusCurrentMapped: 'Permit Finaled',
    })
  })
})

test('who may not see it all is told that it is not there', async () => {
  for (const who of ['firm', 'agent', 'stranger'] as const)
    expect((await ask(who, { url: `${here}/exports/parcels.csv` })).status).toBe(404)
  expect((await ask('agent', { url: `${here}/exports/discrepancies.csv` })).status).toBe(404)
})

test('a text is made safe by the database as it is by the program', async () => {
  const starts = fc.constantFrom(
    '',
    ' ',
    '=',
    '+',
    '-',
    '@',
    '\t',
    '\r',
    '\n',
    '＝',
    '\ufeff=',
    '\u00a0-',
    '-1',
    '+3.5',
    '-1e5',
    'x=',
  )
  const texts = fc.sample(
    fc.tuple(starts, fc.string()).map(([a, b]) => `${a}${b}`.replaceAll('\u0000', '')),
    { numRuns: 500, seed: 7 },
  )
  const { rows } = await transact(services.database, serviceIn(COUNTY), (tx) =>
    sql<{ given: string; safe: string }>`
      select given, ${sql.raw(csvText('given'))} as safe from json_array_elements_text(${JSON.stringify(texts)}::json) as given`.execute(
      tx,
    ),
  )
  expect(rows).toHaveLength(500)
  for (const { given, safe } of rows) {
    const ours = csvCell(given)
    const plain =
      ours.startsWith('"') && ours.endsWith('"') && ours.length > 1
        ? ours.slice(1, -1).replaceAll('""', '"')
        : ours
    if (/[",\r\n]/.test(given) || plain === ours) expect(safe, JSON.stringify(given)).toBe(plain)
  }
})

test('a reader that goes away, and a query that fails, leave no connection behind', async () => {
  const actor = { ...people.reviewer }
  const endless = `select repeat('x', 1000) from generate_series(1, 1000000)`
  for (let turn = 0; turn < 6; turn++) {
    const rows = await services.database.copyOut(actor, endless, 'csv')
    await once(rows, 'readable')
    rows.destroy()
    const failing = await services.database.copyOut(
      actor,
      'select 1 / (2 - n) from generate_series(1, 2) as n',
      'csv',
    )
    await expect(failing.toArray()).rejects.toThrow(/division by zero/)
  }
  // There are four connections for bulk work: had one been kept, this would wait for it in vain.
  expect(await csv('permits.csv')).toHaveLength(2)
})
