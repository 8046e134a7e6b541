import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { printGal, printGalWithU, printWithU } from '../../../src/measure/print/gallons.ts'
import {
  printFeetInches,
  printLength,
  printLengthWithU,
  printTenths,
} from '../../../src/measure/print/length.ts'
import { printNumber, printSignificant } from '../../../src/measure/print/number.ts'
import { uncertain } from '../../../src/measure/uncertain.ts'
import rounding from '../../oracles/jcgm-100/rounding.json' with { type: 'json' }

describe('lengths the trade’s way', () => {
  test.each([
    [4.5, `4'-6"`],
    [4 + 6.5 / 12, `4'-6 1/2"`],
    [4, `4'-0"`],
    [9 + 0.25 / 12, `9'-0 1/4"`],
    [0.5, '6"'],
    [0.5 / 12, '1/2"'],
    [6.25 / 12, '6 1/4"'],
    [0, '0"'],
    [23.5, `23'-6"`],
    [106.2, `106'-2 3/8"`],
    [1200, `1,200'-0"`],
    [0.9999, `1'-0"`],
    [-0.5, '-6"'],
    [-4.5, `-4'-6"`],
    [-1e-9, '0"'],
  ])('%s ft is %s', (ft, text) => expect(printLength(ft)).toBe(text))
  test('to the graduation asked for', () => {
    expect(printLength(4.55, 1)).toBe(`4'-7"`)
    expect(printLength(4.55, 2)).toBe(`4'-6 1/2"`)
    expect(printLength(4.55, 8)).toBe(`4'-6 5/8"`)
  })
  // From a tape in tenths of a foot: 106.2 ft is 106 ft 2.4 in and not 106 ft 2 in.
  test('tenths of a foot are not inches', () => {
    expect(printTenths(106.2)).toBe('106.2 ft')
    expect(printFeetInches(106.2)).toBe('106 ft 2.4 in')
    expect(printFeetInches(0.5)).toBe('6.0 in')
    expect(printFeetInches(-106.2)).toBe('-106 ft 2.4 in')
    expect(printFeetInches(5.9999)).toBe('6 ft 0.0 in')
  })
})

describe('numbers', () => {
  test.each([
    [1000, 0, '1,000'],
    [1234567.891, 2, '1,234,567.89'],
    [-1234.5, 1, '-1,234.5'],
    [-0.04, 1, '0.0'],
    [999, 0, '999'],
    [0, 0, '0'],
  ])('%s to %s places is %s', (value, decimals, text) => expect(printNumber(value, decimals)).toBe(text))
  test.each([
    [4.041666666, 6, '4.04167'],
    [128, 6, '128'],
    [957.5064935, 6, '957.506'],
    [1234567, 3, '1,234,567'],
    [0.000123456, 3, '0.000123'],
    [0, 6, '0'],
    [100, 2, '100'],
  ])('%s to %s digits is %s', (value, digits, text) => expect(printSignificant(value, digits)).toBe(text))
  test('what is printed is what the platform’s own formatter prints', () => {
    const platform = (value: number, decimals: number) =>
      new Intl.NumberFormat('en-US', {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
      }).format(value)
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 3 }), (n, decimals) => {
        const value = n / 1000
        // Halves of the last place may round either way between the two: left aside.
        fc.pre(Math.abs(((Math.abs(value) * 10 ** decimals) % 1) - 0.5) > 1e-6)
        expect(printNumber(value, decimals)).toBe(platform(value, decimals).replace(/^-(?=[0.]+$)/, ''))
      }),
    )
  })
})

describe('gallons', () => {
  test('whole', () => {
    expect(printGal(1000)).toBe('1,000 gal')
    expect(printGal(957.5065)).toBe('958 gal')
  })
  // JCGM 100:2008 7.2.6: an uncertainty to at most two significant digits, the value to the same place.
  test.each([
    [957.506, 8.638, '958 ± 17 gal'],
    [957.506, 0.8638, '957.5 ± 1.7 gal'],
    [1237, 85, '1,240 ± 170 gal'],
    [957.506, 0.05, '957.51 ± 0.10 gal'],
    [957.506, 49.9, '960 ± 100 gal'],
    [12345, 600, '12,300 ± 1,200 gal'],
    [1000, 0, '1,000 gal'],
    [957.506, 0, '957.5 gal'],
  ])('%s with u %s is %s', (value, u, text) => expect(printGalWithU(uncertain(value, u, 'c'))).toBe(text))
  test(rounding.source, () => {
    const [ohms, kilohertz] = rounding.cases
    expect(printWithU(uncertain(ohms!.value, ohms!.u, 'c'), 'Ω')).toBe(`${ohms!.estimate} ± 0.054 Ω`)
    // The expanded uncertainty is printed, so half of theirs goes in.
    expect(printWithU(uncertain(kilohertz!.value, kilohertz!.u / 2, 'c'), 'kHz')).toBe(
      `1,000 ± ${kilohertz!.uncertaintyOfU} kHz`,
    )
  })
  test('what is printed covers what was meant, to the place it is printed to', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 0.001, max: 0.3, noNaN: true }),
        (x, r) => {
          const text = printWithU(uncertain(x, r * x, 'c'), 'sq ft')
          const [, value = '', margin = ''] = /^([\d,.]+) ± ([\d,.]+) sq ft$/.exec(text)!
          const number = (s: string) => Number(s.replaceAll(',', ''))
          expect(Math.abs(number(margin) / (2 * r * x) - 1)).toBeLessThanOrEqual(0.05 + 1e-9)
          expect(Math.abs(number(value) - x)).toBeLessThanOrEqual(0.05 * number(margin) + 1e-9)
          const decimals = (s: string) => s.split('.')[1]?.length ?? 0
          expect(decimals(value)).toBe(decimals(margin))
        },
      ),
    )
  })
})

describe('a length with its uncertainty', () => {
  test.each([
    [61.09, 0.443, `61'-1" ± 11"`],
    [9.25 / 12, 0.625 / 12, `9 1/4" ± 1 1/4"`],
    [1, 0.2 / 12, `1'-0" ± 3/8"`],
  ])('%s ft with u = %s ft is %s', (ft, u, text) => {
    expect(printLengthWithU(uncertain(ft, u, 'tape'))).toBe(text)
  })
})
