import { describe, expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { addParcel, type NewParcel } from '../../src/operations/parcels/add-parcel.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import { transact } from '../../src/store/database/transact.ts'
import {
  aliasesOf,
  numbersAmong,
  parcelsAfter,
  parcelsNumbered,
  searchParcels,
} from '../../src/store/parcels.ts'
import { testApp } from '../support/app.ts'
import { COUNTY } from '../support/people.ts'
import { day } from '../support/quillback.ts'

const { services, people } = await testApp()

const add = async (over: Partial<NewParcel>) =>
  must(
    await addParcel(services, serviceIn(COUNTY), {
      number: '01-0001-0001',
      address: null,
      retiredOn: null,
      oldNumbers: [],
      ...over,
    }),
  )
const kiln = await add({ number: '7.412.31', address: '31 Old Kiln Rd' })
const renumbered = await add({
  number: '07-0412-0044',
  address: '44 Heron Hollow Road',
  oldNumbers: [{ number: '412-44', kind: 'renumbered', changedOn: day('1988-01-01'), note: null }],
})
const split = { number: '07-0500-0001', kind: 'split', changedOn: day('1999-06-01'), note: null } as const
const halves = [
  await add({ number: '07-0500-0011', oldNumbers: [split] }),
  await add({ number: '07-0500-0012', oldNumbers: [split] }),
]

const as = <T>(work: (tx: Parameters<Parameters<typeof transact>[2]>[0]) => Promise<T>) =>
  transact(services.database, people.agent, work)
const found = async (query: string) =>
  (await as((tx) => searchParcels(tx, query, 10))).map(({ parcel, matched }) => [parcel.number, matched])

describe('a search', () => {
  test.each([
    ['07-0412-0031', [['07-0412-0031', 'number']]],
    ['7 412 31', [['07-0412-0031', 'number']]],
    ['O7-O412-OO31', [['07-0412-0031', 'number']]],
    ['412-44', [['07-0412-0044', 'old-number']]],
    [
      '0704120',
      [
        ['07-0412-0031', 'number-begins'],
        ['07-0412-0044', 'number-begins'],
      ],
    ],
    ['old kiln', [['07-0412-0031', 'street']]],
    ['31 Old Killn Road', [['07-0412-0031', 'address']]],
    ['33 Old Kiln Rd', [['07-0412-0031', 'street']]],
    ['nothing like it', []],
  ])('for "%s"', async (query, expected) => {
    expect(await found(query)).toEqual(expected)
  })

  test('stays in the county of whoever asks', async () => {
    const elsewhere = await transact(services.database, people.stranger, (tx) =>
      searchParcels(tx, 'kiln', 10),
    )
    expect(elsewhere).toEqual([])
  })
})

describe('a number in an address', () => {
  const numbered = async (number: string) =>
    (await as((tx) => parcelsNumbered(tx, COUNTY, number))).map(({ id }) => id)

  test('finds its parcel in any spelling, and by an old number', async () => {
    for (const written of ['07-0412-0031', '7-412-31', '07 0412 0031', '0704120031']) {
      expect(await numbered(written)).toEqual([kiln.id])
    }
    expect(await numbered('412-44')).toEqual([renumbered.id])
  })

  test('that was split finds every part', async () => {
    expect(await numbered('07-0500-0001')).toEqual(halves.map(({ id }) => id))
  })

  test('that is none finds nothing', async () => {
    for (const written of ['07-9999-9999', '%', "'", '']) expect(await numbered(written)).toEqual([])
  })
})

test('the list goes by number, from after the last', async () => {
  const [first, ...rest] = await as((tx) => parcelsAfter(tx, COUNTY, undefined, 100))
  expect([first!, ...rest].map(({ number }) => number)).toEqual([
    '07-0412-0031',
    '07-0412-0044',
    '07-0500-0011',
    '07-0500-0012',
  ])
  expect(await as((tx) => parcelsAfter(tx, COUNTY, first!.number, 100))).toEqual(rest)
})

test('old numbers and numbers in use are told', async () => {
  expect(await as((tx) => aliasesOf(tx, COUNTY, halves[0]!.id))).toEqual([split])
  const among = await as((tx) => numbersAmong(tx, COUNTY, ['07-0412-0031', '07-0500-0001', '1']))
  expect([...among]).toEqual(['07-0412-0031'])
})

test('a number that is none of the county’s, or is taken, is refused', async () => {
  const of = (number: string) =>
    addParcel(services, serviceIn(COUNTY), { number, address: null, retiredOn: null, oldNumbers: [] })
  expect(await of('12-34')).toMatchObject({ error: { why: 'invalid', issues: [{ pointer: '/number' }] } })
  expect(await of('07 0412 0031')).toMatchObject({ error: { why: 'conflict' } })
})
