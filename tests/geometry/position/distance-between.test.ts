import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chiSquare2Above, chiSquare2Quantile } from '../../../src/geometry/position/chi-square.ts'
import { distanceBetween } from '../../../src/geometry/position/distance-between.ts'
import type { Point } from '../../../src/geometry/position/point.ts'
import { exact, standardUncertainty, uncertain } from '../../../src/measure/uncertain.ts'
import { normal } from './normal.ts'

const at = (x: number, y: number, u: number, name: string): Point => ({
  x: uncertain(x, u, `${name} x`),
  y: uncertain(y, u, `${name} y`),
})

// Upper percentage points of chi-square with 2 degrees of freedom, as statistical tables print them (common practice).
test.each([
  [0.5, 1.386],
  [0.9, 4.605],
  [0.95, 5.991],
  [0.99, 9.21],
])('chi-square with 2 degrees of freedom, %f: %f', (p, printed) => {
  expect(chiSquare2Quantile(p)).toBeCloseTo(printed, 3)
  expect(chiSquare2Above(chiSquare2Quantile(p))).toBeCloseTo(1 - p, 12)
})

describe('recorded against found', () => {
  test('a 3-4-5 offset with equal circular uncertainties', () => {
    const { value } = distanceBetween(at(0, 0, 0.6, 'record'), at(3, 4, 0.8, 'found'))
    // C = (0.36 + 0.64)·I, so D² = 25 and u(d) = 1.
    expect(value.distance.value).toBe(5)
    expect(standardUncertainty(value.distance)).toBeCloseTo(1, 12)
    expect(value.squared).toBeCloseTo(25, 10)
    expect(value.verdict).toBe('elsewhere')
    expect(value.leastTellableFt).toBeCloseTo(Math.sqrt(5.991), 3)
  })

  test('what both share cancels: a baseline error moves record and finding together', () => {
    const shared = (x: number): Point => ({ x: uncertain(x, 5, 'baseline'), y: exact(0) })
    const { value } = distanceBetween(shared(0), shared(0.1))
    expect(value.squared).toBe(Number.POSITIVE_INFINITY)
    expect(value.verdict).toBe('elsewhere')
  })

  test('exact positions: the same is the same, a hair apart is elsewhere', () => {
    const exactly = (x: number): Point => ({ x: exact(x), y: exact(0) })
    expect(distanceBetween(exactly(1), exactly(1)).value).toMatchObject({
      squared: 0,
      p: 1,
      verdict: 'same-place',
    })
    expect(distanceBetween(exactly(1), exactly(1.001)).value).toMatchObject({ p: 0, verdict: 'elsewhere' })
  })

  test('the same place keeps a finite, honest uncertainty of the distance', () => {
    const { value } = distanceBetween(at(7, 7, 1, 'a'), at(7, 7, 1, 'b'))
    expect(value.distance.value).toBe(0)
    expect(standardUncertainty(value.distance)).toBeCloseTo(Math.SQRT2, 12)
  })
})

const coordinate = fc.double({ min: -200, max: 200, noNaN: true })
const spread = fc.double({ min: 0.05, max: 5, noNaN: true })

test('turning the frame changes nothing but the coordinates', () => {
  fc.assert(
    fc.property(
      coordinate,
      coordinate,
      spread,
      spread,
      fc.double({ min: 0, max: 6.28, noNaN: true }),
      (x, y, u, v, t) => {
        const [c, s] = [Math.cos(t), Math.sin(t)]
        const turned = (px: number, py: number, name: string): Point => ({
          x: {
            value: c * px - s * py,
            causes: new Map([
              [`${name} 1`, c * u],
              [`${name} 2`, -s * v],
            ]),
          },
          y: {
            value: s * px + c * py,
            causes: new Map([
              [`${name} 1`, s * u],
              [`${name} 2`, c * v],
            ]),
          },
        })
        const plain = (px: number, py: number, name: string): Point => ({
          x: uncertain(px, u, `${name} 1`),
          y: uncertain(py, v, `${name} 2`),
        })
        const a = distanceBetween(plain(0, 0, 'record'), plain(x, y, 'found')).value
        const b = distanceBetween(turned(0, 0, 'record'), turned(x, y, 'found')).value
        expect(b.squared).toBeCloseTo(a.squared, Math.max(0, 6 - Math.ceil(Math.log10(1 + a.squared))))
        expect(b.distance.value).toBeCloseTo(a.distance.value, 8)
      },
    ),
  )
})

test('swapping recorded and found changes only the direction', () => {
  fc.assert(
    fc.property(coordinate, coordinate, spread, spread, (x, y, u, v) => {
      const [one, other] = [at(0, 0, u, 'r'), at(x, y, v, 'f')]
      const [there, back] = [distanceBetween(one, other).value, distanceBetween(other, one).value]
      expect(back.squared).toBe(there.squared)
      expect(back.offset.x.value).toBe(-there.offset.x.value + 0)
    }),
  )
})

test('of places that are one, 95 in a hundred are called one (20,000 seeded trials)', () => {
  const draw = normal(7)
  const trials = 20_000
  let called = 0
  for (let i = 0; i < trials; i++) {
    const recorded = at(0.5 * draw(), 0.5 * draw(), 0.5, 'record')
    const found = at(1.2 * draw(), 1.2 * draw(), 1.2, 'found')
    if (distanceBetween(recorded, found).value.verdict === 'same-place') called++
  }
  // Binomial: sd = √(0.95·0.05/20000) = 0.0015; four of them.
  expect(Math.abs(called / trials - 0.95)).toBeLessThan(0.006)
})
