import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { errorEllipse, principalAxes } from '../../../src/geometry/position/ellipse.ts'
import { tieThatWouldShrinkMost } from '../../../src/geometry/position/extra-tie.ts'
import { covariance, drms, type Point } from '../../../src/geometry/position/point.ts'
import { commonPart, polygonArea } from '../../../src/geometry/position/polygon.ts'
import { searchArea } from '../../../src/geometry/position/search-area.ts'
import { positionFromTies } from '../../../src/geometry/position/ties.ts'
import { positionFromTwoTies } from '../../../src/geometry/position/two-ties.ts'
import { exact, uncertain } from '../../../src/measure/uncertain.ts'
import { normal } from './normal.ts'

const at = (x: number, y: number, ux: number, uy: number, rho = 0): Point => ({
  x: { value: x, causes: new Map([['one', ux]]) },
  y: {
    value: y,
    causes: new Map([
      ['one', rho * uy],
      ['two', Math.sqrt(1 - rho * rho) * uy],
    ]),
  },
})

describe('the error ellipse', () => {
  test('axes along the frame: semi-axes are 2.4477 σ at 95 %', () => {
    const it = errorEllipse(at(10, 20, 3, 1))
    expect(it).toMatchObject({ x: 10, y: 20, angleDeg: 0, coverage: 0.95 })
    expect(it.semiMajor).toBeCloseTo(3 * 2.4477, 3)
    expect(it.semiMinor).toBeCloseTo(2.4477, 3)
  })

  test('principal variances keep trace and determinant', () => {
    const u = fc.double({ min: 0.01, max: 10, noNaN: true })
    fc.assert(
      fc.property(u, u, fc.double({ min: -0.99, max: 0.99, noNaN: true }), (ux, uy, rho) => {
        const c = covariance(at(0, 0, ux, uy, rho))
        const { major, minor } = principalAxes(c)
        expect(major).toBeGreaterThanOrEqual(minor)
        expect(major + minor).toBeCloseTo(c.xx + c.yy, 8)
        expect((major * minor) / (c.xx * c.yy - c.xy * c.xy)).toBeCloseTo(1, 6)
      }),
    )
  })
})

const inRing = (ring: readonly (readonly [number, number])[], x: number, y: number): boolean =>
  ring.every(([x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length]!
    return (x2 - x1) * (y - y1) - (y2 - y1) * (x - x1) >= 0
  })

test('the shape holds the true place as often as it says (40,000 seeded places)', () => {
  const place = at(5, -3, 2, 1.2, 0.6)
  const draw = normal(12)
  for (const coverage of [0.5, 0.95]) {
    const { shapes } = searchArea([place], coverage).value
    let held = 0
    const trials = 40_000
    for (let i = 0; i < trials; i++) {
      const [p, q] = [draw(), draw()]
      if (inRing(shapes[0].ring, 5 + 2 * p, -3 + 1.2 * (0.6 * p + 0.8 * q))) held++
    }
    // Binomial sd at most 0.0025; the ring lies just outside its ellipse, which adds up to 0.001.
    expect(held / trials).toBeGreaterThan(coverage - 0.01)
    expect(held / trials).toBeLessThan(coverage + 0.011)
  }
})

test('two mirror places are both drawn, and ground that they share is counted once', () => {
  const far = must(positionFromTwoTies(uncertain(50, 0.5, 'a'), uncertain(50, 0.5, 'b'), exact(60))).value
  const apart = searchArea([far.away, far.toward]).value
  expect(apart.shapes).toHaveLength(2)
  expect(apart.areaSqFt).toBeCloseTo(2 * polygonArea(apart.shapes[0].ring), 6)

  const near = must(positionFromTwoTies(uncertain(30.5, 1, 'a'), uncertain(30.5, 1, 'b'), exact(60))).value
  const joined = searchArea([near.away, near.toward]).value
  expect(joined.areaSqFt).toBeLessThan(2 * polygonArea(joined.shapes[0].ring) - 1)
  expect(joined.areaSqFt).toBeGreaterThan(polygonArea(joined.shapes[0].ring))
})

test('nobody is sent to search a point', () => {
  const { shapes } = searchArea([{ x: exact(1), y: exact(2) }]).value
  expect(shapes[0].ellipse).toMatchObject({ semiMajor: 0.5, semiMinor: 0.5 })
})

test('common part of two squares', () => {
  const square = (x: number, y: number) =>
    [
      [x, y],
      [x + 2, y],
      [x + 2, y + 2],
      [x, y + 2],
    ] as const
  expect(polygonArea(commonPart(square(0, 0), square(1, 1)))).toBeCloseTo(1, 12)
  expect(polygonArea(commonPart(square(0, 0), square(5, 5)))).toBe(0)
  expect(polygonArea(commonPart(square(0, 0), square(0, 0)))).toBeCloseTo(4, 12)
})

describe('the tie that would shrink the search most', () => {
  const A = { corner: 'A', x: 0, y: 0 }
  const B = { corner: 'B', x: 40, y: 0 }
  const D = { corner: 'D', x: 0, y: -28 }

  test('what it promises is what the fit then gives', () => {
    const [x, y, sigma] = [25, 45, 0.3]
    const ties = [A, B].map((it) => ({
      corner: it.corner,
      at: { x: exact(it.x), y: exact(it.y) },
      tie: uncertain(Math.hypot(x - it.x, y - it.y), sigma, it.corner),
    }))
    const before = must(positionFromTies(ties)).value.best.point
    const [promised] = tieThatWouldShrinkMost(before, [D], sigma).value
    const third = {
      corner: 'D',
      at: { x: exact(0), y: exact(-28) },
      tie: uncertain(Math.hypot(x, y + 28), sigma, 'D'),
    }
    const after = must(positionFromTies([...ties, third])).value.best
    expect(promised!.drmsAfterFt).toBeCloseTo(after.drmsFt, 8)
    const area = (point: Point) => {
      const { major, minor } = principalAxes(covariance(point))
      return Math.sqrt(major * minor)
    }
    expect(promised!.areaShare).toBeCloseTo(area(after.point) / area(before), 8)
  })

  test('a needle is best cut across', () => {
    const needle = at(100, 0, 0.2, 5)
    const [best] = tieThatWouldShrinkMost(
      needle,
      [
        { corner: 'along', x: 0, y: 0 },
        { corner: 'across', x: 100, y: 60 },
      ],
      0.2,
    ).value
    expect(best).toMatchObject({ corner: 'across', expectedFt: 60 })
  })

  test('with the side open, a corner off the wall goes first', () => {
    const { away, toward } = must(
      positionFromTwoTies(uncertain(50, 0.3, 'a'), uncertain(50, 0.3, 'b'), exact(60)),
    ).value
    const ranked = tieThatWouldShrinkMost(away, [{ corner: 'mid', x: 30, y: 0 }, D], 0.3, toward).value
    expect(ranked.map((it) => it.corner)).toEqual(['D', 'mid'])
    expect(ranked[0]!.tellsSides).toBeGreaterThan(4)
    expect(ranked[1]!.tellsSides).toBeCloseTo(0, 9)
  })

  test('no tie ever makes it worse', () => {
    const u = fc.double({ min: 0.05, max: 10, noNaN: true })
    const c = fc.double({ min: -100, max: 100, noNaN: true })
    fc.assert(
      fc.property(
        u,
        u,
        fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        c,
        c,
        u,
        (ux, uy, rho, x, y, sigma) => {
          const place = at(0, 0, ux, uy, rho)
          const [it] = tieThatWouldShrinkMost(place, [{ corner: 'X', x, y }], sigma).value
          expect(it!.areaShare).toBeLessThanOrEqual(1)
          expect(it!.drmsAfterFt).toBeLessThanOrEqual(drms(covariance(place)) + 1e-9)
        },
      ),
    )
  })
})
