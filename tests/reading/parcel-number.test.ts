import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { canonicalParcelNumber, type ParcelNumberFormat } from '../../src/reading/parcel-number.ts'

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
