import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  canonicalParcelNumber,
  type ParcelNumberFormat,
  parcelFormatFrom,
} from '../../src/reading/parcel-number.ts'
import { findParcelNumbers } from '../../src/reading/values/identifiers.ts'

const quillback: ParcelNumberFormat = { groups: [2, 4, 4], separator: '-', example: '07-0412-0031' }
const read = (text: string) => canonicalParcelNumber(text, quillback)

describe('a parcel number in any spelling', () => {
  test.each([
    '07-0412-0031',
    '0704120031',
    '07 0412 0031',
    '7-412-31',
    '07.0412.0031',
    '07–0412–0031',
    'Parcel No. 07-0412-0031',
    'PIN: 0704120031',
    '07-0412-0031-000',
    '０７-０４１２-００３１',
  ])('%s', (text) => {
    expect(read(text)).toEqual({ ok: true, value: '07-0412-0031' })
  })

  test.each([
    '',
    '07-0412',
    '07-0412-0031-5',
    '07-0412-00311',
    '070412003',
    '07-04I2-0031',
    '07-0412-0031; drop',
  ])('%s is refused and shown how to write it', (text) => {
    const result = read(text)
    expect(result.ok).toBe(false)
    expect(!result.ok && result.error).toContain('write it like 07-0412-0031')
  })

  test('the canonical spelling is its own canonical spelling', () => {
    const figures = (n: number) =>
      fc.integer({ min: 0, max: 10 ** n - 1 }).map((it) => String(it).padStart(n, '0'))
    fc.assert(
      fc.property(figures(2), figures(4), figures(4), (a, b, c) => {
        expect(read(`${a}-${b}-${c}`)).toEqual({ ok: true, value: `${a}-${b}-${c}` })
        expect(read(`${a}${b}${c}`)).toEqual({ ok: true, value: `${a}-${b}-${c}` })
      }),
    )
  })
})

describe('several ways of writing them in one county, with letters too', () => {
  const format = parcelFormatFrom(['07-0412-0031', 'R-114-22A', '114.22'])!
  const several = (text: string) => canonicalParcelNumber(text, format)

  test('are told by an example of each', () => {
    expect(format).toEqual({
      groups: [2, 4, 4],
      separator: '-',
      example: '07-0412-0031',
      others: [
        { groups: [1, 3, 3], letters: [0, 2], separator: '-', example: 'R-114-22A' },
        { groups: [3, 2], separator: '.', example: '114.22' },
      ],
    })
    expect(parcelFormatFrom(['07-0412-0031', ''])).toBeNull()
    expect(parcelFormatFrom(['07--0412'])).toBeNull()
  })
  test.each([
    ['7-412-31', '07-0412-0031'],
    ['0704120031', '07-0412-0031'],
    ['R-114-22A', 'R-114-22A'],
    ['r 14 22a', 'R-014-22A'],
    ['R-114-9', 'R-114-9'],
    ['114.22', '114.22'],
    ['14.2', '014.02'],
  ])('%s is %s', (text, value) => {
    expect(several(text)).toEqual({ ok: true, value })
  })
  test('what none of them is is refused, and each is shown', () => {
    const refused = several('R-1145-22A-X')
    expect(!refused.ok && refused.error).toContain('write it like 07-0412-0031 or R-114-22A or 114.22')
  })
  test('are found in a text, each as it is', () => {
    const found = (text: string) => findParcelNumbers(text, format).map(({ value }) => value)
    expect(found('Parcel R-114-22A on Mill Road')).toEqual(['R-114-22A'])
    expect(found('07-0412-0031')).toEqual(['07-0412-0031'])
    expect(found('Rear of lot, new system')).toEqual([])
  })
  test('the canonical spelling is its own canonical spelling', () => {
    const part = fc.stringMatching(/^[A-Z0-9]{1,3}$/)
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Z]$/), part, (letter, end) => {
        const read = several(`${letter}-114-${end}`)
        expect(read).toEqual({ ok: true, value: `${letter}-114-${end}` })
      }),
    )
  })
})
