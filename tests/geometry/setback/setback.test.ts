import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Vertex } from '../../../src/geometry/position/polygon.ts'
import { type Extent, separation } from '../../../src/geometry/setback/extent.ts'
import { outlineDistance } from '../../../src/geometry/setback/outline.ts'
import { type Body, setback } from '../../../src/geometry/setback/setback.ts'
import { standardUncertainty, uncertain } from '../../../src/measure/uncertain.ts'
import { tied } from '../position/located.ts'
import { normal } from '../position/normal.ts'

/** A place known to u each way. */
const sited = ([x, y]: Vertex, u: number, extent: Extent = { kind: 'point' }, name = 'here'): Body => ({
  extent,
  located: {
    half: null,
    sightings: [
      { kind: 'fix', name, point: { x: uncertain(x, u, `${name} x`), y: uncertain(y, u, `${name} y`) } },
    ],
  },
})
const well = (ft: number, u = 0): Body => sited([ft, 0], u, { kind: 'point' }, 'well')
const bar = (length: number, bearing: number | null, beside = 0): Extent => ({
  kind: 'bar',
  length,
  width: 2,
  bearing,
  beside,
})

describe('met, missed, or too close to call', () => {
  test.each([
    [52.1, 1, 'suffices'],
    [51.9, 1, 'too-close-to-call'],
    [48.1, 1, 'too-close-to-call'],
    [47.9, 1, 'falls-short'],
    [50, 0, 'suffices'],
  ])('%f ft, u = %f ft, of 50 ft: %s', (ft, u, verdict) => {
    expect(setback(sited([0, 0], 0), well(ft, u), 50).value.verdict).toBe(verdict)
  })

  test('the distance of two places is as uncertain as a Monte Carlo run says', () => {
    const draw = normal(5)
    const { nearest } = setback(
      sited([0, 0], 0.5),
      sited([30, 40], 0.8, { kind: 'point' }, 'there'),
      10,
    ).value
    const trials = 100_000
    let [sum, squares] = [0, 0]
    for (let i = 0; i < trials; i++) {
      const d = Math.hypot(30 + 0.8 * draw() - 0.5 * draw(), 40 + 0.8 * draw() - 0.5 * draw())
      sum += d
      squares += d * d
    }
    const sd = Math.sqrt(squares / trials - (sum / trials) ** 2)
    // 100,000 trials: a standard deviation is good to 0.2 %; 2 % leaves room for the second order.
    expect(Math.abs(sd / standardUncertainty(nearest) - 1)).toBeLessThan(0.02)
  })

  test('a place along an arc may be nearer than a slope would have it', () => {
    // Two corners 12.2 ft apart, seen from 106 ft: the arc bends toward a well beside the house.
    const here: Body = {
      extent: { kind: 'point' },
      located: tied({ c: 12.2, a: 106.2, b: 116.8 }, { u: 0.5, name: 'here' }),
    }
    const { nearest, farthest } = setback(here, sited([-80, 90], 0, { kind: 'point' }, 'well'), 5).value
    // Both ends are kept: how much nearer it may lie, and how much farther.
    expect(standardUncertainty(nearest)).not.toBeCloseTo(standardUncertainty(farthest), 1)
  })
})

describe('from outline to outline', () => {
  test('an 80 ft trench tied once does not keep 100 ft because its tie is 110 ft off', () => {
    const open = setback(sited([0, 0], 0, bar(80, null)), well(110), 100).value
    expect(open.verdict).toBe('too-close-to-call')
    expect(open.nearest.value).toBeCloseTo(110 - Math.hypot(80, 1), 9)
    expect(open.farthest.value).toBeCloseTo(110, 9)
  })

  test('square to the line between them it does: its sides are a foot nearer and no more', () => {
    const { verdict, nearest } = setback(sited([0, 0], 0, bar(80, Math.PI / 2)), well(110), 100).value
    expect(verdict).toBe('suffices')
    expect(nearest.value).toBeCloseTo(109, 9)
    // A bearing is good to ±5°, rectangular: turned by two standard uncertainties the trench's line comes so much nearer.
    const turn = ((2 * 5) / Math.sqrt(3)) * (Math.PI / 180)
    expect(2 * standardUncertainty(nearest)).toBeCloseTo(110 * (1 - Math.cos(turn)), 2)
  })

  test('running at the well, it may reach toward it by all its length', () => {
    const { nearest, farthest, verdict } = setback(sited([0, 0], 0, bar(80, 0)), well(110), 100).value
    expect([nearest.value, farthest.value, verdict]).toEqual([30, 110, 'too-close-to-call'])
  })

  test('two pits are their radii nearer than their middles', () => {
    const disc = (radius: number): Extent => ({ kind: 'disc', radius, beside: 0 })
    expect(separation({ at: [0, 0], extent: disc(4) }, { at: [30, 0], extent: disc(3) })).toEqual({
      nearest: 23,
      farthest: 23,
    })
  })

  test('what is too near where it was tied is too near however large it is', () => {
    const { verdict } = setback(sited([0, 0], 0, { kind: 'unknown' }), well(60), 100).value
    expect(verdict).toBe('falls-short')
    expect(setback(sited([0, 0], 0, { kind: 'unknown' }), well(400), 100).value.verdict).toBe(
      'too-close-to-call',
    )
  })

  test('the span holds every way the bar can lie: 500 drawn', () => {
    const along = fc.double({ min: 0, max: 1, noNaN: true })
    const turn = fc.double({ min: 0, max: Math.PI, noNaN: true })
    const far = fc.double({ min: 20, max: 200, noNaN: true })
    fc.assert(
      fc.property(along, turn, far, (tiedAt, bearing, ft) => {
        const [length, w] = [60, 2]
        const corner = (u: number, v: number): Vertex => [
          u * Math.cos(bearing) - v * Math.sin(bearing),
          u * Math.sin(bearing) + v * Math.cos(bearing),
        ]
        const [from, to] = [-tiedAt * length, (1 - tiedAt) * length]
        const truly = outlineDistance(
          {
            ring: [corner(from, -w / 2), corner(to, -w / 2), corner(to, w / 2), corner(from, w / 2)],
            grow: 0,
          },
          { ring: [[ft, 0]], grow: 0 },
        )
        for (const known of [null, bearing]) {
          const extent: Extent = { kind: 'bar', length, width: w, bearing: known, beside: 0 }
          const span = separation({ at: [0, 0], extent }, { at: [ft, 0], extent: { kind: 'point' } })
          expect(truly).toBeGreaterThanOrEqual(span.nearest - 1e-9)
          expect(truly).toBeLessThanOrEqual(span.farthest + 1e-9)
        }
      }),
      { numRuns: 500 },
    )
  })
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
        const ours = outlineDistance(
          { ring: [[px, py]], grow: 0 },
          {
            ring: [
              [ax, ay],
              [bx, by],
            ],
            grow: 0,
          },
        )
        expect(Math.abs(ours - reference)).toBeLessThan(0.001)
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
  fc.assert(
    fc.property(box, box, (one, other) => {
      const [a, b] = [corners(one), corners(other)]
      const [pa, pb] = [new Flatten.Polygon(a), new Flatten.Polygon(b)]
      // The library's own contains() is wrong where a ray runs along an edge: a corner in the other box's frame instead.
      const inside = holds(one, b[0]!) || holds(other, a[0]!)
      const [reference] = pa.distanceTo(pb)
      const ours = outlineDistance({ ring: a, grow: 0 }, { ring: b, grow: 0 })
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
      const [a, b] = [sited([ax, ay], 0.4), sited([bx, by], 0.9, { kind: 'point' }, 'there')]
      const [one, other] = [setback(a, b, 10).value.nearest, setback(b, a, 10).value.nearest]
      expect(other.value).toBeCloseTo(one.value, 9)
      expect(standardUncertainty(other)).toBeCloseTo(standardUncertainty(one), 3)
    }),
    { numRuns: 50 },
  )
})
