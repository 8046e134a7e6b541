import fc from 'fast-check'
import { unit } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { must, type Result } from '../../../src/base/result.ts'
import { parseArea } from '../../../src/measure/parse/area.ts'
import { parseCount } from '../../../src/measure/parse/count.ts'
import { parseFlow } from '../../../src/measure/parse/flow.ts'
import type { ParseIssue } from '../../../src/measure/parse/issue.ts'
import { parsePercRate } from '../../../src/measure/parse/perc-rate.ts'
import { parseVolume } from '../../../src/measure/parse/volume.ts'
import { printGal } from '../../../src/measure/print/gallons.ts'

const refusalOf = (result: Result<unknown, ParseIssue>): ParseIssue => {
  if (result.ok) throw new Error(`taken as ${JSON.stringify(result.value)}`)
  return result.error
}

describe('volumes', () => {
  test.each([
    ['1,000 gal', 1000, 0.5],
    ['1000 gal', 1000, 0.5],
    ['1000gal', 1000, 0.5],
    ['1,000 gallons', 1000, 0.5],
    ['1,000-gal', 1000, 0.5],
    ['1,000-gallon tank', 1000, 0.5],
    ['1,000 gal. septic tank', 1000, 0.5],
    ['1,000 gal septic', 1000, 0.5],
    ['1,000 gal nominal capacity', 1000, 0.5],
    ['1,000 Gals.', 1000, 0.5],
    ['1,000 US gal', 1000, 0.5],
    ['957.5 gal', 957.5, 0.05],
    ['757.082 gal', 757.082, 0.0005],
    ['1 M gal', 1000, 500],
    ['1.25 M gal', 1250, 5],
    ['1½ M gal', 1500, 250],
    ['1,000 gal ± 50', 1000, 50],
    ['1,000 ± 50 gal', 1000, 50],
  ])('%s', (written, gal, halfStep) => {
    const volume = must(parseVolume(written))
    expect(volume.gal).toBeCloseTo(gal, 9)
    expect(volume.halfStepGal).toBeCloseTo(halfStep, 9)
    expect(volume.asWritten).toBe(written)
  })
  test.each([
    ['3,785 L', 3785, 'L'],
    ['3785 litres', 3785, 'L'],
    ['134 cu ft', 134, 'cuft'],
    ['134 cu. ft.', 134, 'cuft'],
    ['134 ft3', 134, 'cuft'],
    ['134 ft³', 134, 'cuft'],
    ['134 CF', 134, 'cuft'],
    ['3.8 m3', 3.8, 'm3'],
    ['3.8 m³', 3.8, 'm3'],
    ['231 cu in', 231, 'cuin'],
  ])('%s is what a unit library makes of it', (written, value, name) => {
    const theirs = unit(value, name).toNumber('gal')
    expect(Math.abs(must(parseVolume(written)).gal / theirs - 1)).toBeLessThan(1e-6)
  })
  test.each([
    ['1.000 gal', ['1,000 gal', '1 gal']],
    ['1.500 gal', ['1,500 gal', '1.5 gal']],
    ['1000', ['1000 gal']],
    ['1O00 gal', ['1000 gal']],
    ['5OO gal', ['500 gal']],
    ['±1000 gal', ['about 1000 gal']],
    ['+/- 1000 gal', ['about 1000 gal']],
    ['１０００ gal', ['1000 gal']],
    ['2 MG', ['2 M gal', '2,000,000 gal']],
    ['2 x 500 gal', ['500 gal', '1,000 gal']],
    ['1,000/500 gal', ['1,000 gal', '500 gal']],
    ['1,000-1,200 gal', ['1,000 gal', '1,200 gal']],
  ])('%s could be %j', (text, readings) => {
    const issue = refusalOf(parseVolume(text))
    expect(issue.readings).toEqual(readings)
    for (const reading of issue.readings!) expect(parseVolume(reading).ok, reading).toBe(true)
  })
  test.each([
    '',
    '-5 gal',
    'gal',
    '1e308 gal',
    'NaN gal',
    '>1000 gal',
    '450 gpd',
    '4 ft',
    '99999999999 gal',
    '1 barrel',
    '1,000 gal ± 1,000',
  ])('%j is refused', (text) => {
    expect(refusalOf(parseVolume(text)).message.length).toBeGreaterThan(10)
  })
  test('an unknown unit is told with those that are known', () => {
    expect(refusalOf(parseVolume('1,000 galons')).message).toContain(
      'write gal, L, cu ft, cu in, cu yd or m3, like 1,000 gal',
    )
  })
  test('bare gallons where the caller says so', () => {
    expect(must(parseVolume('1,000', { bare: 'gal' })).gal).toBe(1000)
  })
  test('printed and read back: whole gallons', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (gal) => {
        expect(must(parseVolume(printGal(gal))).gal).toBe(gal)
      }),
    )
  })
})

describe('areas', () => {
  test.each([
    ['600 sq ft', 600],
    ['600 sq. ft.', 600],
    ['600 SF', 600],
    ['600 ft2', 600],
    ['600 ft²', 600],
    ['600 ft^2', 600],
    ['1,200 square feet', 1200],
    ['1.25 acres', 54_450],
    ['1/2 ac', 21_780],
    ['12 sq yd', 108],
    ['144 sq in', 1],
  ])('%s', (written, sqFt) => expect(must(parseArea(written)).sqFt).toBeCloseTo(sqFt, 9))
  test('square meters as a unit library has them', () => {
    const theirs = unit(55.7, 'm2').toNumber('sqft')
    expect(must(parseArea('55.7 m²')).sqFt / theirs).toBeCloseTo(1, 6)
  })
  test('a length by a width is refused with the area it would be', () => {
    expect(refusalOf(parseArea('20 x 30 ft')).readings).toEqual(['600 sq ft'])
    expect(refusalOf(parseArea(`20' x 30'`)).readings).toEqual(['600 sq ft'])
    expect(refusalOf(parseArea('20 ft by 30 ft')).readings).toEqual(['600 sq ft'])
  })
  test.each(['600', '600 ft', '600 gal', '250 sq ft/br', '-1 sq ft'])('%j is refused', (text) => {
    expect(parseArea(text).ok).toBe(false)
  })
  test('bare', () => expect(must(parseArea('600', { bare: 'sq ft' })).sqFt).toBe(600))
})

describe('daily flows', () => {
  test.each([
    ['450 gpd', 450],
    ['450 G.P.D.', 450],
    ['450 gal/day', 450],
    ['450 gallons per day', 450],
    ['450 gals. per day', 450],
    ['1,700 L/day', 1700 / 3.785411784],
    ['1.5 m³/d', 1500 / 3.785411784],
    ['100 cu ft/day', (100 * 1728) / 231],
  ])('%s', (written, gpd) => expect(must(parseFlow(written)).gpd).toBeCloseTo(gpd, 9))
  test.each(['450', '450 gal', '20 gpm', '150 gpd/bedroom', '2 MGD', '0.6 gpd/sq ft', '-1 gpd'])(
    '%j is refused',
    (text) => expect(parseFlow(text).ok).toBe(false),
  )
  test('thousands or millions', () => {
    const { readings } = refusalOf(parseFlow('2 MGD'))
    expect(readings!.map((reading) => must(parseFlow(reading)).gpd)).toEqual([2000, 2_000_000])
  })
})

describe('percolation rates', () => {
  test.each([
    ['20 mpi', 20, 0.5],
    ['20 MPI', 20, 0.5],
    ['20 min/in', 20, 0.5],
    ['20 min./in.', 20, 0.5],
    ['20 min per in', 20, 0.5],
    ['20 minutes per inch', 20, 0.5],
    ['1 in in 20 min', 20, 0.5],
    ['1 inch in 20 minutes', 20, 0.5],
    ['1" in 20 min', 20, 0.5],
    ['1"/20 min', 20, 0.5],
    [`1" per 20'`, 20, 0.5],
    ['1 in: 20 min', 20, 0.5],
    ['2 1/2 min/in', 2.5, 0.25],
    ['6.5 mpi', 6.5, 0.05],
    ['6 in in 90 min', 15, 0.5 / 6],
    ['90 min for the last 6 in', 15, 0.5 / 6],
    ['1 hr per inch', 60, 30],
    ['3 in/hr', 20, (0.5 / 3) * 20],
    ['0.5 in per min', 2, 0.2],
    ['8 min/cm', 8 * 2.54, 0.5 * 2.54],
  ])('%s', (written, minPerIn, halfStep) => {
    const rate = must(parsePercRate(written))
    expect(rate.minPerIn).toBeCloseTo(minPerIn, 9)
    expect(rate.halfStepMinPerIn).toBeCloseTo(halfStep, 9)
  })
  test('a range is refused with its ends, a number alone with its unit', () => {
    expect(refusalOf(parsePercRate('5-10 mpi')).readings).toEqual(['5 min/in', '10 min/in'])
    expect(refusalOf(parsePercRate('20')).readings).toEqual(['20 min/in'])
    expect(refusalOf(parsePercRate('20 min')).readings).toEqual(['20 min/in'])
    expect(must(parsePercRate('20', { bare: 'min/in' })).minPerIn).toBe(20)
  })
  test.each([
    '',
    '0 mpi',
    '0 min/in',
    '>60 mpi',
    '20 min',
    '1 in',
    'min/in',
    '20 in/in',
    '1e9 mpi',
    '99999 mpi',
    'NaN mpi',
    '-5 mpi',
    'fast',
  ])('%j is refused', (text) => expect(refusalOf(parsePercRate(text)).message.length).toBeGreaterThan(10))
  test('slow or fast, one rate both ways round', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 600 }), (minutes) => {
        const rate = must(parsePercRate(`${minutes} min/in`)).minPerIn
        expect(must(parsePercRate(`1 in in ${minutes} min`)).minPerIn).toBe(rate)
        expect(must(parsePercRate(`${minutes} mpi`)).minPerIn).toBe(rate)
        expect(must(parsePercRate(`${(60 / minutes).toFixed(12)} in/hr`)).minPerIn).toBeCloseTo(rate, 6)
      }),
    )
  })
})

describe('counts', () => {
  test.each([
    ['3', 3],
    ['three', 3],
    ['Three', 3],
    ['3 BR', 3],
    ['3BR', 3],
    ['3 bdrms.', 3],
    ['three bedrooms', 3],
    ['two (2) tanks', 2],
    ['Bedrooms 4', 4],
    ['0', 0],
    ['twenty', 20],
  ])('%s', (written, count) => expect(must(parseCount(written))).toEqual({ count, asWritten: written }))
  test.each([
    ['3-4', ['3', '4']],
    ['3 or 4', ['3', '4']],
    ['two (3)', ['2', '3']],
  ])('%s could be %j', (text, readings) => expect(refusalOf(parseCount(text)).readings).toEqual(readings))
  test.each(['', '3.5', '-2', 'many', '>3', '1e3', '99999999', 'NaN'])('%j is refused', (text) =>
    expect(parseCount(text).ok).toBe(false),
  )
})

test('whatever is typed, every parser answers and none throws', () => {
  const soup = fc.string({
    unit: fc.constantFrom(...`0123456789.,'"½/-± xgalMLcuftsqinmpdpayrbh()³²^>O\u0000`),
    maxLength: 60,
  })
  const parsers = [parseVolume, parseArea, parseFlow, parsePercRate, parseCount] as const
  fc.assert(
    fc.property(fc.oneof(soup, fc.string({ unit: 'binary', maxLength: 120 })), (text) => {
      for (const parse of parsers) {
        const read: Result<object, ParseIssue> = parse(text)
        if (!read.ok) {
          expect(read.error.message).not.toBe('')
          continue
        }
        for (const value of Object.values(read.value)) {
          if (typeof value !== 'number') continue
          expect(Number.isFinite(value) && value >= 0).toBe(true)
        }
      }
    }),
    { numRuns: 3000 },
  )
})
