import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import type { Point } from '../../../src/geometry/position/point.ts'
import { positionFromTwoTies } from '../../../src/geometry/position/two-ties.ts'
import { outlineToOutline, pointToPoint, pointToSegment } from '../../../src/geometry/setback/separation.ts'
import { setback, setbackOf } from '../../../src/geometry/setback/setback.ts'
import { exact, standardUncertainty, uncertain } from '../../../src/measure/uncertain.ts'
import { normal } from '../position/normal.ts'

const known = (x: number, y: number): Point => ({ x: exact(x), y: exact(y) })
const at = (x: number, y: number, u: number, name: string): Point => ({
  x: uncertain(x, u, `${name} x`),
  y: uncertain(y, u, `${name} y`),
})

describe('meets, short, or too close to call', () => {
  test.each([
    [52.1, 1, 'meets'],
    [51.9, 1, 'too-close-to-call'],
    [48.1, 1, 'too-close-to-call'],
    [47.9, 1, 'short'],
    [50, 0, 'meets'],
  ])('%f ft, u = %f ft, of 50 ft: %s', (ft, u, verdict) => {
    expect(setbackOf(uncertain(ft, u, 'tape'), 50).value.verdict).toBe(verdict)
  })

  test('a tank tied from the house against a well that was taped too', () => {
    const tie = (a: number, b: number, name: string) =>
      must(
        positionFromTwoTies(
          uncertain(a, 0.3, `${name} a`),
          uncertain(b, 0.3, `${name} b`),
          uncertain(40, 0.1, 'baseline'),
        ),
      ).value
    const tank = tie(30, 30, 'tank').away
    const well = tie(78, 68, 'well').away
    const it = setback([tank], [well], 50)
    expect(it.value.distance.value).toBeCloseTo(
      Math.hypot(well.x.value - tank.x.value, well.y.value - tank.y.value),
      9,
    )
    expect(standardUncertainty(it.value.distance)).toBeGreaterThan(0.3)
    expect(it.value.verdict).toBe('short')
    expect(it.steps[0]?.formula).toBe('√(Δx² + Δy²)')
  })
})

test('the uncertainty of a distance is that of a Monte Carlo run', () => {
  const draw = normal(5)
  const distance = pointToPoint(at(0, 0, 0.5, 'a'), at(30, 40, 0.8, 'b'))
  const trials = 100_000
  let [sum, squares] = [0, 0]
  for (let i = 0; i < trials; i++) {
    const d = Math.hypot(30 + 0.8 * draw() - 0.5 * draw(), 40 + 0.8 * draw() - 0.5 * draw())
    sum += d
    squares += d * d
  }
  const sd = Math.sqrt(squares / trials - (sum / trials) ** 2)
  // 100,000 trials: a standard deviation is good to 1/√(2N) = 0.2 %; 1 % leaves room for the second order.
  expect(Math.abs(sd / standardUncertainty(distance) - 1)).toBeLessThan(0.01)
})

test('at the foot of a line both ends’ errors enter by their shares', () => {
  const wall = { from: at(0, 0, 1, 'from'), to: at(10, 0, 1, 'to') }
  const middle = pointToSegment(known(5, 7), wall)
  expect(middle.value).toBe(7)
  expect(standardUncertainty(middle)).toBeCloseTo(Math.SQRT1_2, 12)
  const beyond = pointToSegment(known(13, 4), wall)
  expect(beyond.value).toBe(5)
  expect(standardUncertainty(beyond)).toBeCloseTo(1, 12)
})

const coordinate = fc.double({ min: -100, max: 100, noNaN: true, noDefaultInfinity: true })

test('a place and a segment are as far apart as a plane-geometry library says', () => {
  fc.assert(
    fc.property(
      coordinate,
      coordinate,
      coordinate,
      coordinate,
      coordinate,
      coordinate,
      (px, py, ax, ay, bx, by) => {
        fc.pre(Math.hypot(bx - ax, by - ay) > 1e-3)
        const [reference] = Flatten.point(px, py).distanceTo(Flatten.segment(ax, ay, bx, by))
        const ours = pointToSegment(known(px, py), { from: known(ax, ay), to: known(bx, by) })
        expect(Math.abs(ours.value - reference)).toBeLessThan(0.001)
      },
    ),
    { numRuns: 500 },
  )
})

test('two rectangles are as far apart as a plane-geometry library says, and zero when they touch', () => {
  const size = fc.double({ min: 1, max: 40, noNaN: true })
  const box = fc.record({
    x: coordinate,
    y: coordinate,
    w: size,
    h: size,
    t: fc.double({ min: 0, max: 3.14, noNaN: true }),
  })
  type Box = { x: number; y: number; w: number; h: number; t: number }
  const holds = ({ x, y, w, h, t }: Box, [px, py]: [number, number]): boolean => {
    const [u, v] = [
      (px - x) * Math.cos(t) + (py - y) * Math.sin(t),
      (py - y) * Math.cos(t) - (px - x) * Math.sin(t),
    ]
    return u >= 0 && u <= w && v >= 0 && v <= h
  }
  const corners = ({ x, y, w, h, t }: Box) =>
    (
      [
        [0, 0],
        [w, 0],
        [w, h],
        [0, h],
      ] as const
    ).map(
      ([u, v]) =>
        [x + u * Math.cos(t) - v * Math.sin(t), y + u * Math.sin(t) + v * Math.cos(t)] as [number, number],
    )
  const outline = (list: [number, number][]) => list.map(([x, y]) => known(x, y)) as [Point, ...Point[]]
  fc.assert(
    fc.property(box, box, (one, other) => {
      const [a, b] = [corners(one), corners(other)]
      const [pa, pb] = [new Flatten.Polygon(a), new Flatten.Polygon(b)]
      // The library's own contains() is wrong where a ray runs along an edge: a corner in the other box's frame instead.
      const inside = holds(one, b[0]!) || holds(other, a[0]!)
      const [reference] = pa.distanceTo(pb)
      const ours = outlineToOutline(outline(a), outline(b)).value
      // The library takes points within its own 1e-6 for one, and a shallow angle makes more of that: a hundredth of
      // an inch is far above both and far below any tape.
      expect(Math.abs(ours - (inside ? 0 : reference))).toBeLessThan(0.001)
    }),
    { numRuns: 300 },
  )
})

test('it does not matter which of the two is asked first', () => {
  fc.assert(
    fc.property(coordinate, coordinate, coordinate, coordinate, (ax, ay, bx, by) => {
      const [a, b] = [at(ax, ay, 0.4, 'a'), at(bx, by, 0.9, 'b')]
      expect(pointToPoint(b, a).value).toBe(pointToPoint(a, b).value)
      expect(standardUncertainty(pointToPoint(b, a))).toBeCloseTo(standardUncertainty(pointToPoint(a, b)), 12)
    }),
  )
})
