import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rectangular } from '../../src/measure/measured-length.ts'
import { propagateNumerically } from '../../src/measure/propagate-numerically.ts'
import {
  budget,
  exact,
  expanded,
  minus,
  over,
  plus,
  propagate,
  scale,
  standardUncertainty,
  times,
  type Uncertain,
  uncertain,
} from '../../src/measure/uncertain.ts'
import circle from '../oracles/jcgm-100/circle.json' with { type: 'json' }
import oracle from '../oracles/jcgm-100/worked-tank.json' with { type: 'json' }
import { looseness, monteCarlo } from './monte-carlo.ts'

const GAL_PER_CU_FT = 1728 / 231
const near = (value: number, { value: wanted, tolerance }: { value: number; tolerance: number }) =>
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(tolerance)

describe(oracle.source, () => {
  const u = rectangular(oracle.halfWidthIn / 12)
  const tank = (dimensions: readonly number[]): Uncertain =>
    scale(dimensions.map((ft, i) => uncertain(ft, u, `side ${i}`)).reduce(times), GAL_PER_CU_FT)
  test('8 × 4 × 4 ft', () => {
    const gal = tank(oracle.dimensionsFt)
    near(u, oracle.uFt)
    near(gal.value, oracle.gal)
    near(standardUncertainty(gal), oracle.uGal)
    near(expanded(gal), oracle.expandedGal)
  })
  test('7 × 3.5 × 4 ft lies just outside its nominal 750 gal', () => {
    const { small } = oracle
    const gal = tank(small.dimensionsFt)
    expect(Math.abs(gal.value - small.gal)).toBeLessThan(0.05)
    expect(Math.abs(expanded(gal) - small.expandedGal)).toBeLessThanOrEqual(small.tolerance)
    expect(small.nominal - gal.value).toBeGreaterThan(expanded(gal))
  })
  test('the product form (JCGM 100:2008 5.1.6): relative variances add', () => {
    const gal = tank(oracle.dimensionsFt)
    const relative = Math.sqrt(oracle.dimensionsFt.reduce((sum, ft) => sum + (u / ft) ** 2, 0))
    expect(standardUncertainty(gal) / gal.value).toBeCloseTo(relative, 12)
  })
})

test(circle.source, () => {
  const radius = uncertain(circle.diameter / 2, circle.uOfRadius, 'radius')
  const area = scale(times(radius, radius), Math.PI)
  near(area.value, circle.area)
  near(standardUncertainty(area), circle.uOfArea)
})

/**
 * JCGM 100:2008 H.1, an end gauge against a standard, worked there: u_c = 32 nm (from memory). By its own budget
 * (Table H.1, from memory): 25, 9.7, 2.9, 16.6 nm and smaller, root sum of squares 31.7.
 */
test('an uncertainty budget in nanometres (JCGM 100:2008 H.1, from memory)', () => {
  const parts = [
    ['standard', 25],
    ['observed difference', 9.7],
    ['expansion difference', 2.9],
    ['temperature difference', 16.6],
  ] as const
  const sum = parts.map(([cause, u]) => uncertain(0, u, cause)).reduce(plus)
  expect(Math.round(standardUncertainty(sum))).toBe(32)
  expect(budget(sum).map(({ cause }) => cause)).toEqual([
    'standard',
    'temperature difference',
    'observed difference',
    'expansion difference',
  ])
})

const value = fc.double({ min: 0.5, max: 50, noNaN: true })
const u = fc.integer({ min: 0, max: 500 }).map((n) => n / 10_000)
const cause = fc.constantFrom('tape', 'a', 'b', 'c')
const input = fc
  .tuple(value, fc.array(fc.tuple(cause, u), { maxLength: 3 }))
  .map(([x, list]) => list.map(([name, s]) => uncertain(0, s * x, name)).reduce(plus, exact(x)))

const FORMS: {
  readonly [name: string]: readonly [
    (a: Uncertain, b: Uncertain) => Uncertain,
    (a: number, b: number) => number,
  ]
} = {
  sum: [plus, (a, b) => a + b],
  difference: [minus, (a, b) => a - b],
  product: [times, (a, b) => a * b],
  quotient: [over, (a, b) => a / b],
}

describe.each(Object.keys(FORMS))('%s', (name) => {
  const [form, f] = FORMS[name]!
  test('is what central differences propagate', () => {
    fc.assert(
      fc.property(input, input, (a, b) => {
        const analytic = form(a, b)
        const numeric = propagateNumerically(([x = 0, y = 0]) => f(x, y), [a, b])
        expect(analytic.value).toBe(f(a.value, b.value))
        expect(standardUncertainty(numeric)).toBeCloseTo(standardUncertainty(analytic), 6)
      }),
    )
  })
  test('is what propagation of distributions gives (JCGM 101:2008), causes shared', () => {
    const a = plus(uncertain(8, 0.03, 'tape'), uncertain(0, 0.02, 'a'))
    const b = plus(uncertain(5, 0.03, 'tape'), uncertain(0, 0.04, 'b'))
    const analytic = form(a, b)
    for (const rectangularDraws of [false, true]) {
      const drawn = monteCarlo(([x = 0, y = 0]) => f(x, y), [a, b], { rectangular: rectangularDraws })
      expect(Math.abs(standardUncertainty(analytic) / drawn.standardDeviation - 1)).toBeLessThan(looseness())
      const inside = drawn.sorted.filter((y) => Math.abs(y - analytic.value) <= expanded(analytic)).length
      // k = 2 covers 95.4 % of a normal and more of a sum of rectangles.
      expect(inside / drawn.sorted.length).toBeGreaterThan(0.95)
    }
  })
})

describe('causes', () => {
  test('a value less itself is certain, and twice itself twice as uncertain', () => {
    fc.assert(
      fc.property(input, (a) => {
        expect(standardUncertainty(minus(a, a))).toBe(0)
        expect(standardUncertainty(plus(a, a))).toBeCloseTo(2 * standardUncertainty(a), 12)
        expect(over(a, a).value).toBe(1)
        expect(standardUncertainty(over(a, a))).toBeLessThan(1e-15)
      }),
    )
  })
  test('independent causes add by squares, shared ones by sums', () => {
    expect(standardUncertainty(plus(uncertain(1, 3, 'a'), uncertain(1, 4, 'b')))).toBe(5)
    expect(standardUncertainty(plus(uncertain(1, 3, 'a'), uncertain(1, 4, 'a')))).toBe(7)
    expect(standardUncertainty(minus(uncertain(1, 3, 'a'), uncertain(1, 4, 'a')))).toBe(1)
  })
  test('shares of a budget come to the whole, largest first', () => {
    fc.assert(
      fc.property(input, input, (a, b) => {
        const list = budget(plus(a, b))
        if (list.length === 0) return
        expect(list.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
        for (const [i, { share }] of list.entries())
          if (i > 0) expect(share).toBeLessThanOrEqual(list[i - 1]!.share)
      }),
    )
  })
  test('a slope of zero brings in nothing', () => {
    expect(propagate(1, [uncertain(2, 1, 'a')], [0]).causes.size).toBe(0)
  })
  test('what is not a number, or a negative uncertainty, is a fault of the program', () => {
    expect(() => uncertain(Number.NaN, 1, 'a')).toThrow()
    expect(() => uncertain(1, -1, 'a')).toThrow()
    expect(() => uncertain(1, Number.POSITIVE_INFINITY, 'a')).toThrow()
  })
})

test('slopes where a function ends are taken from the side it stands on', () => {
  const edge = propagateNumerically(([x = 0]) => Math.acos(x) ** 2, [uncertain(1, 0.001, 'x')])
  expect(Number.isFinite(standardUncertainty(edge))).toBe(true)
})
