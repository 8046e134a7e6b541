import fc from 'fast-check'
import { cumulativeStdNormalProbability } from 'simple-statistics'
import { describe, expect, test } from 'vitest'
import { compareWithMinimum, compareWithStated } from '../../src/measure/compare.ts'
import { normalBelow } from '../../src/measure/normal.ts'
import { exact, uncertain } from '../../src/measure/uncertain.ts'
import { uniform } from './monte-carlo.ts'

const rule = { tolerance: 50, usableUncertainty: 60, unit: 'gal' }
const against = (value: number, u: number, stated = 1000) =>
  compareWithStated(uncertain(value, u, 'all'), stated, rule).value

describe('with what is stated', () => {
  test.each([
    ['inside the tolerance', 1030, 10, 'agrees', 40],
    ['exactly on it', 1050, 0, 'agrees', 0],
    ['a hair over it, known exactly', 1050.001, 0, 'larger', 0.001],
    ['over it, and firmly', 1100, 10, 'larger', 30],
    ['under it, and firmly', 900, 10, 'smaller', 30],
    ['outside, but U reaches back', 1060, 10, 'agrees', 10],
    ['too rough to tell', 1000, 40, 'cannot-tell', 130],
    ['rough, yet firmly smaller', 700, 40, 'smaller', 170],
  ] as const)('%s', (_, value, u, verdict, margin) => {
    const it = against(value, u)
    expect(it.verdict).toBe(verdict)
    expect(it.margin).toBeCloseTo(margin, 9)
  })

  test('agreement that only the uncertainty gives says so', () => {
    expect(against(1060, 10).onlyThanksToUncertainty).toBe(true)
    expect(against(1040, 10).onlyThanksToUncertainty).toBe(false)
    expect(against(1200, 10).onlyThanksToUncertainty).toBe(false)
  })

  test('a 733 gal tank sold as 750 gal (12VAC5-610-815 Table 5.3) is no smaller tank', () => {
    const found = uncertain(733.1, 7, 'all')
    const strict = { tolerance: 0, usableUncertainty: 40, unit: 'gal' }
    expect(compareWithStated(found, 750, strict).value.verdict).toBe('smaller')
    const nominal = { tolerance: 0.05 * 750, usableUncertainty: 40, unit: 'gal' }
    expect(compareWithStated(found, 750, nominal).value.verdict).toBe('agrees')
  })

  const number = fc.double({ min: 0, max: 3000, noNaN: true })
  const small = fc.double({ min: 0, max: 200, noNaN: true })
  const any = fc.record({ found: number, stated: number, u: small, tolerance: small, usable: small })

  test('mirrors: smaller one way is larger the other, and the rest stays', () => {
    const mirror = { smaller: 'larger', larger: 'smaller', agrees: 'agrees', 'cannot-tell': 'cannot-tell' }
    fc.assert(
      fc.property(any, ({ found, stated, u, tolerance, usable }) => {
        const params = { tolerance, usableUncertainty: usable, unit: 'gal' }
        const one = compareWithStated(uncertain(found, u, 'c'), stated, params).value
        const other = compareWithStated(uncertain(2 * stated - found, u, 'c'), stated, params).value
        fc.pre(one.margin > 1e-6)
        expect(other.verdict).toBe(mirror[one.verdict])
        expect(one.margin).toBeGreaterThanOrEqual(0)
      }),
    )
  })
  test('less uncertainty never takes a verdict of difference back', () => {
    fc.assert(
      fc.property(
        any,
        fc.double({ min: 0, max: 1, noNaN: true }),
        ({ found, stated, u, tolerance, usable }, s) => {
          const params = { tolerance, usableUncertainty: usable, unit: 'gal' }
          const rough = compareWithStated(uncertain(found, u, 'c'), stated, params).value.verdict
          const fine = compareWithStated(uncertain(found, u * s, 'c'), stated, params).value.verdict
          if (rough === 'smaller' || rough === 'larger') expect(fine).toBe(rough)
          if (rough === 'agrees') expect(fine).not.toBe('cannot-tell')
        },
      ),
    )
  })
  test('a moved difference stays in its verdict while it moves by less than the margin', () => {
    fc.assert(
      fc.property(
        any,
        fc.double({ min: -0.999, max: 0.999, noNaN: true }),
        ({ found, stated, u, tolerance, usable }, s) => {
          const params = { tolerance, usableUncertainty: usable, unit: 'gal' }
          const it = compareWithStated(uncertain(found, u, 'c'), stated, params).value
          fc.pre(it.margin > 1e-6)
          const moved = uncertain(found + s * it.margin, u, 'c')
          expect(compareWithStated(moved, stated, params).value.verdict).toBe(it.verdict)
        },
      ),
    )
  })
  test('the guard band holds false alarms down: a true tank at the edge of tolerance is rarely called different', () => {
    const next = uniform(106)
    const trials = 20_000
    let alarms = 0
    for (let i = 0; i < trials; i++) {
      const error = 12 * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next())
      if (against(1050 + error, 12).verdict === 'larger') alarms++
    }
    // One tail beyond 2u of a normal: 2.3 %.
    expect(alarms / trials).toBeGreaterThan(0.015)
    expect(alarms / trials).toBeLessThan(0.03)
  })
  test('the working names the numbers it turned on', () => {
    const { steps } = compareWithStated(uncertain(900, 10, 'c'), 1000, rule)
    expect(steps.map(({ numbers }) => numbers)).toEqual([
      '2 × √(10²)',
      '900 gal − 1,000 gal',
      '-100 + 20 < −50',
    ])
    expect(steps.at(-1)!.result).toBe('smaller')
  })
})

describe('with a minimum', () => {
  test.each([
    ['well above', 1100, 10, 'suffices', 80],
    ['on it, known exactly', 1000, 0, 'suffices', 0],
    ['with U just to spare', 1020, 10, 'suffices', 0],
    ['above, within U', 1010, 10, 'too-close-to-call', 10],
    ['below, within U', 990, 10, 'too-close-to-call', 10],
    ['well below', 900, 10, 'falls-short', 80],
  ] as const)('%s', (_, value, u, verdict, margin) => {
    const it = compareWithMinimum(uncertain(value, u, 'all'), 1000, 'gal').value
    expect(it.verdict).toBe(verdict)
    expect(it.margin).toBeCloseTo(margin, 9)
    expect(it.difference).toBe(value - 1000)
  })
  test('no uncertainty, no third answer', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), fc.integer({ min: 1, max: 5000 }), (found, minimum) => {
        const { verdict } = compareWithMinimum(exact(found), minimum, 'gal').value
        expect(verdict).toBe(found >= minimum ? 'suffices' : 'falls-short')
      }),
    )
  })
  test('chances: half at the minimum, 97.7 % at two u above', () => {
    const chance = (value: number) =>
      compareWithMinimum(uncertain(value, 10, 'c'), 1000, 'gal').value.chanceSuffices
    expect(chance(1000)).toBeCloseTo(0.5, 12)
    expect(chance(1020)).toBeCloseTo(0.97725, 5)
  })
})

describe('the normal distribution', () => {
  test('agrees with a statistics library to the digits of its table', () => {
    for (let z = -3; z <= 3; z += 0.25)
      expect(Math.abs(normalBelow(z) - cumulativeStdNormalProbability(z))).toBeLessThan(1e-4)
  })
  test('known values: Φ(1.96) and Φ(2), and both sides come to one', () => {
    // From any table of the normal distribution.
    expect(normalBelow(1.959963984540054)).toBeCloseTo(0.975, 12)
    expect(normalBelow(2)).toBeCloseTo(0.9772498680518208, 12)
    fc.assert(
      fc.property(fc.double({ min: -12, max: 12, noNaN: true }), (z) => {
        expect(normalBelow(z) + normalBelow(-z)).toBeCloseTo(1, 9)
      }),
    )
  })
})
