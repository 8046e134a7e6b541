import { randomUUID } from 'node:crypto'
import { sql } from 'kysely'
import { describe, expect, test } from 'vitest'
import { transact, withoutCounty } from '../../../src/store/database/transact.ts'
import { testDatabase } from '../../support/database.ts'
import { enrolPeople } from '../../support/people.ts'

const { database } = await testDatabase()
const { reviewer, stranger } = await enrolPeople(database)

const PARCELS = [
  ['07-0412-0031', '412 Mill Pond Road'],
  ['07-0412-0032', '414 Mill Pond Rd.'],
  ['07-0413-0001', '9 Old Quarry Lane'],
  ['11-0002-0100', '88 Tannery St, Unit 2'],
  ['11-0002-0101', '88b Tannery Street'],
] as const
const ids = new Map(PARCELS.map(([number]) => [number as string, randomUUID() as string]))

await transact(database, reviewer, async (tx) => {
  for (const [number, address] of PARCELS) {
    const row = { county: 'quillback', id: ids.get(number)!, number, address, retired_on: null }
    await tx.insertInto('parcel').values(row).execute()
  }
  const alias = (parcel: string, number: string, kind: 'renumbered' | 'split') => ({
    county: 'quillback',
    parcel: ids.get(parcel)!,
    number,
    kind,
    changed_on: '1994-01-01',
    note: null,
  })
  await tx
    .insertInto('parcel_alias')
    .values([
      alias('07-0413-0001', 'Map 12 Lot 7', 'renumbered'),
      alias('11-0002-0100', '11-0002-0009', 'split'),
      alias('11-0002-0101', '11-0002-0009', 'split'),
    ])
    .execute()
})

const search = (query: string, who = reviewer, most = 10) =>
  transact(database, who, async (tx) => {
    const { rows } = await sql<{ number: string; matched: string }>`
      select p.number, s.matched from search_parcels(${query}, ${most}) s join parcel p on p.id = s.parcel
      order by p.number`.execute(tx)
    return rows.map(({ number, matched }) => `${number} ${matched}`)
  })

describe('a parcel is found', () => {
  test.each([
    '07-0412-0031',
    '0704120031',
    '07 0412 0031',
    '07.0412.0031',
    '07–0412–0031',
    '7-412-31',
    '07/0412/0031',
    'O7-O412-OO3l',
  ])('by its number written %s', async (spelling) => {
    expect(await search(spelling)).toEqual(['07-0412-0031 number'])
  })

  test('by a number it once had', async () => {
    expect(await search('map 12, lot 7')).toEqual(['07-0413-0001 old-number'])
  })

  test('both of what a split made, by the number before', async () => {
    expect(await search('11-2-9')).toEqual(['11-0002-0100 old-number', '11-0002-0101 old-number'])
  })

  test('by the beginning of its number', async () => {
    expect(await search('07-0412')).toEqual(['07-0412-0031 number-begins', '07-0412-0032 number-begins'])
  })

  test.each([
    ['412 Mill Pond Road', '07-0412-0031 address'],
    ['412 mill pond rd', '07-0412-0031 address'],
    ['412 mil pnod road', '07-0412-0031 address'],
    ['412 millpond rd', '07-0412-0031 address'],
    ['9 quarry', '07-0413-0001 address'],
    ['9 old qarry la', '07-0413-0001 address'],
  ])('by its address written %s', async (typed, found) => {
    expect(await search(typed)).toEqual([found])
  })

  test('with its neighbors when the house number is not there', async () => {
    expect(await search('413 Mill Pond Road')).toEqual(['07-0412-0031 street', '07-0412-0032 street'])
  })

  test('with its whole street when no house is given', async () => {
    expect(await search('tannery')).toEqual(['11-0002-0100 street', '11-0002-0101 street'])
  })
})

describe('nothing is found', () => {
  test.each(['zzzzzz', '', '   ', '%', '___', '99-9999', "'; drop table parcel; --", '\\'])(
    'for %j',
    async (query) => {
      expect(await search(query)).toEqual([])
    },
  )

  test('in another county, or by nobody', async () => {
    expect(await search('07-0412-0031', stranger)).toEqual([])
    const { rows } = await withoutCounty(database, (tx) =>
      sql`select * from search_parcels('07-0412-0031', 10)`.execute(tx),
    )
    expect(rows).toEqual([])
  })
})

test('no more than asked for', async () => {
  expect(await search('07-04', reviewer, 2)).toHaveLength(2)
})
