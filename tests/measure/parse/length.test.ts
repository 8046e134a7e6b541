import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { parseLength } from '../../../src/measure/parse/length.ts'
import { LONGEST_TEXT } from '../../../src/measure/parse/tidy.ts'
import {
  type Graduation,
  printFeetInches,
  printLength,
  printTenths,
} from '../../../src/measure/print/length.ts'

const M = 1 / 0.3048

describe('the ways people write a length', () => {
  // [as written, ft, half of the last place in inches]
  test.each([
    [`4'-6"`, 4.5, 0.5],
    [`4'6"`, 4.5, 0.5],
    [`4' 6"`, 4.5, 0.5],
    [`4'6`, 4.5, 0.5],
    [`4'-6`, 4.5, 0.5],
    [`4' - 6"`, 4.5, 0.5],
    ['4’-6”', 4.5, 0.5],
    ['4′ 6″', 4.5, 0.5],
    ['4´6´´', 4.5, 0.5],
    [`4'6''`, 4.5, 0.5],
    [`4'–6"`, 4.5, 0.5],
    ['4 ft 6 in', 4.5, 0.5],
    ['4 ft. 6 in.', 4.5, 0.5],
    ['4 feet, 6 inches', 4.5, 0.5],
    ['4 ft and 6 in', 4.5, 0.5],
    ['4 FT 6 IN', 4.5, 0.5],
    ['4ft6in', 4.5, 0.5],
    [`4'-0"`, 4, 0.5],
    [`0'-6"`, 0.5, 0.5],
    [`23'-6"`, 23.5, 0.5],
    ['54"', 4.5, 0.5],
    ['54 in', 4.5, 0.5],
    ['54 in.', 4.5, 0.5],
    ['54 inches', 4.5, 0.5],
    ['282 in', 23.5, 0.5],
    ['4 ft', 4, 6],
    [`40'`, 40, 6],
    ["4.5'", 4.5, 0.6],
    ['4.50 ft', 4.5, 0.06],
    ['106.2 ft', 106.2, 0.6],
    ['106.20 feet', 106.2, 0.06],
    ['.5 ft', 0.5, 0.6],
    ['4 ft 6 1/2 in', 4 + 6.5 / 12, 0.25],
    [`4'-6 1/2"`, 4 + 6.5 / 12, 0.25],
    [`4'-6-1/2"`, 4 + 6.5 / 12, 0.25],
    ['4’-6½”', 4 + 6.5 / 12, 0.25],
    [`4'6 ½`, 4 + 6.5 / 12, 0.25],
    ['6¹⁄₂ in', 6.5 / 12, 0.25],
    [`4'-6 1/8"`, 4 + 6.125 / 12, 1 / 16],
    [`4'-6 3/16"`, 4 + 6.1875 / 12, 1 / 32],
    [`4'-6.25"`, 4 + 6.25 / 12, 0.005],
    ['2 1/2"', 2.5 / 12, 0.25],
    ['2½ inches', 2.5 / 12, 0.25],
    ['⅝ in', 0.625 / 12, 1 / 16],
    [`4 1/2'`, 4.5, 3],
    ['1/2 ft', 0.5, 3],
    ['1.37 m', 1.37 * M, 0.005 * M * 12],
    ['1.37 M', 1.37 * M, 0.005 * M * 12],
    ['7.16 metres', 7.16 * M, 0.005 * M * 12],
    ['137 cm', 1.37 * M, 0.005 * M * 12],
    ['1370 mm', 1.37 * M, 0.0005 * M * 12],
    ['1,370 mm', 1.37 * M, 0.0005 * M * 12],
    ['1 m 37 cm', 1.37 * M, 0.005 * M * 12],
    ['3 yd', 9, 18],
    ['10-ft', 10, 6],
    ['10-foot', 10, 6],
    ['6-in.', 0.5, 0.5],
    ['120 LF', 120, 6],
    ['120 L.F.', 120, 6],
    ['120 lin. ft.', 120, 6],
    ['120 lineal feet', 120, 6],
    ['1,200 ft', 1200, 6],
    ['0 in', 0, 0.5],
    ['  54\u00a0in  ', 4.5, 0.5],
    [`4' ± 2"`, 4, 2],
    ['4 ft +/- 2 in', 4, 2],
    ['4 ± 0.5 ft', 4, 6],
  ])('%s', (written, ft, halfStepIn) => {
    const length = must(parseLength(written))
    expect(length.ft).toBeCloseTo(ft, 12)
    expect(length.halfStepFt * 12).toBeCloseTo(halfStepIn, 12)
    expect(length.asWritten).toBe(written)
    expect(length.approximate).toBeUndefined()
  })

  test('one length in four ways: 23 ft 6 in, 23.5 ft, 282 in, 7.16 m', () => {
    const all = [`23'-6"`, '23.5 ft', '282 in', '7.16 m'].map((written) => must(parseLength(written)))
    for (const { ft, halfStepFt } of all) expect(Math.abs(ft - 23.5)).toBeLessThanOrEqual(halfStepFt)
  })

  test.each([
    'about 40 ft',
    'approx. 40 ft',
    `~40'`,
    `40'±`,
    '40 ft +/-',
    '≈ 40 ft',
    '40 ± ft',
    '40 ft (approx.)',
    '40 ft more or less',
  ])('%s is approximate', (text) => {
    expect(must(parseLength(text))).toMatchObject({ ft: 40, approximate: true })
  })

  test('a bare number is what the caller says it is', () => {
    expect(must(parseLength('106.2', { bare: 'ft' })).ft).toBe(106.2)
    expect(must(parseLength('54', { bare: 'in' })).ft).toBe(4.5)
    expect(must(parseLength('6 1/2', { bare: 'in' })).ft).toBeCloseTo(6.5 / 12, 12)
    expect(must(parseLength(`4'-6"`, { bare: 'in' })).ft).toBe(4.5)
  })
})

const refusal = (text: string, bare?: 'ft' | 'in') => {
  const length = parseLength(text, bare ? { bare } : undefined)
  if (length.ok) throw new Error(`${text} was taken as ${length.value.ft} ft`)
  return length.error
}

describe('what is ambiguous is refused with the readings it could have', () => {
  test.each([
    ['1 200 ft', ['200 ft', '1,200 ft']],
    ['4-6', [`4'-6"`, '4 ft', '6 ft', '4 in', '6 in']],
    ['4-6 in', [`4'-6"`, '4 in', '6 in']],
    ['4-6 ft', ['4 ft', '6 ft']],
    ['10-14', ['10 ft', '14 ft', '10 in', '14 in']],
    ['106.2', ['106.2 ft', '106.2 in', `106'-2"`]],
    ['54', ['54 ft', '54 in']],
    [`4'-18"`, ['18 in', '66 in']],
    ['1O0 ft', ['100 ft']],
    ['l50 ft', ['150 ft']],
    ['4,5 m', ['4.5']],
    ['±40 ft', ['about 40 ft']],
    ['５４ in', ['54 in']],
  ])('%s', (text, readings) => {
    expect(refusal(text).readings).toEqual(readings)
  })
  test('a bare range stays refused whatever a bare number means', () => {
    expect(refusal('4-6', 'ft').readings).toContain(`4'-6"`)
  })
  test('every reading offered is itself accepted', () => {
    for (const text of ['4-6', '106.2', `4'-18"`, '1O0 ft', '4-6 in', '10-14'])
      for (const reading of refusal(text).readings ?? []) expect(parseLength(reading).ok, reading).toBe(true)
  })
})

describe('what is no length is refused with what to write', () => {
  test.each([
    ['', 'nothing is written here'],
    ['   ', 'nothing is written here'],
    ['-4 ft', 'negative'],
    ['-0', 'negative'],
    ['>100 ft', 'a bound'],
    ['over 100 ft', 'a bound'],
    [`min. 50'`, 'a bound'],
    ['8 x 4 x 4', 'more than one length'],
    [`8' x 4'`, 'more than one length'],
    ['4.5 ft 6 in', 'one or the other'],
    ['4 1/2 ft 6 in', 'one or the other'],
    ['6.5 1/2 in', 'decimals and a fraction'],
    ['6 3/2 in', 'one or more'],
    ['6 1/0 in', 'not a fraction'],
    ['1e3 ft', 'scientific notation'],
    ['1e308', 'scientific notation'],
    ['NaN', 'not a unit of length'],
    ['Infinity ft', 'not a unit of length'],
    ['4 furlongs', 'not a unit of length'],
    ['n/a', 'not a unit of length'],
    ['ft', 'not a unit of length'],
    ['"', 'is not a length'],
    ['4 ft 6 in 3', 'not one length'],
    ['6 in 4 ft', 'not one length'],
    ['1.2.3 ft', 'not a number'],
    ['1,00 ft', 'not a number'],
    ['4 ft\u0007', 'U+0007'],
    ['4\u200b ft', 'U+200B'],
    ['4 ft \u202e', 'U+202E'],
    ['٤ ft', 'figures other than 0 to 9'],
    ['４ ft', 'figures other than 0 to 9'],
    ['±40 ft', 'a tolerance without its value'],
    ['4 ft ± 5 ft', 'as large as the value'],
    ['1234567890123456 ft', 'more digits'],
    ['999999 ft', 'longer than'],
    ['9'.repeat(LONGEST_TEXT + 1), 'characters long'],
    ['4 ft ± 2', 'no unit'],
  ])('%j', (text, why) => {
    const { message } = refusal(text)
    expect(message).toContain(why)
    expect(message.length).toBeLessThan(260)
  })
})

describe('whatever is typed', () => {
  const soup = fc.string({
    unit: fc.constantFrom(...`0123456789.,'"′″½⅛/-–± xftinmcINFT()>~\u00a0\u0000٤`),
    maxLength: 100,
  })
  test('it answers, with a length that is one or with a refusal that says why', () => {
    fc.assert(
      fc.property(fc.oneof(soup, fc.string({ unit: 'binary', maxLength: 200 })), (text) => {
        const length = parseLength(text)
        if (!length.ok) {
          expect(length.error.message).not.toBe('')
          return
        }
        expect(length.value.ft).toBeGreaterThanOrEqual(0)
        expect(Object.is(length.value.ft, -0)).toBe(false)
        expect(Number.isFinite(length.value.ft)).toBe(true)
        expect(length.value.halfStepFt).toBeGreaterThanOrEqual(0)
        expect(length.value.asWritten).toBe(text)
      }),
      { numRuns: 3000 },
    )
  })
  test('long texts made to mislead a pattern cost no more than short ones', () => {
    const nasty = [
      "'",
      '1'.repeat(79),
      '1,'.repeat(40),
      '1 '.repeat(40),
      '1/'.repeat(40),
      '-'.repeat(80),
      ' 1 '.repeat(26),
    ]
    const longest = ['1 000'.repeat(40_000), '±'.repeat(200_000), '1/2 '.repeat(50_000)]
    const started = performance.now()
    for (const text of [...nasty, ...longest]) for (let i = 0; i < 20; i++) parseLength(text)
    expect(performance.now() - started).toBeLessThan(1000)
  })
})

describe('printed and read back', () => {
  const ft = fc.double({ min: 0, max: 5000, noNaN: true })
  test.each([1, 2, 4, 8, 16, 32] as const)(
    'to 1/%s in: within half a graduation',
    (partsOfInch: Graduation) => {
      fc.assert(
        fc.property(ft, (x) => {
          const back = must(parseLength(printLength(x, partsOfInch)))
          expect(Math.abs(back.ft - x)).toBeLessThanOrEqual(0.5 / 12 / partsOfInch + 1e-9)
          // And what is printed again is the same text.
          expect(printLength(back.ft, partsOfInch)).toBe(printLength(x, partsOfInch))
        }),
      )
    },
  )
  test('tenths of a foot, and feet with tenths of an inch', () => {
    fc.assert(
      fc.property(ft, (x) => {
        expect(Math.abs(must(parseLength(printTenths(x))).ft - x)).toBeLessThanOrEqual(0.05 + 1e-9)
        const back = must(parseLength(printFeetInches(x)))
        expect(Math.abs(back.ft - x)).toBeLessThanOrEqual(0.05 / 12 + 1e-9)
      }),
    )
  })
  test('a length stated in any unit is the same length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30_000 }), (mm) => {
        const meters = must(parseLength(`${(mm / 1000).toFixed(3)} m`)).ft
        expect(must(parseLength(`${mm} mm`)).ft).toBeCloseTo(meters, 9)
        expect(must(parseLength(`${(mm / 10).toFixed(1)} cm`)).ft).toBeCloseTo(meters, 9)
        expect(must(parseLength(`${(meters * 12).toFixed(9)} in`)).ft).toBeCloseTo(meters, 9)
      }),
    )
  })
})
