import fc from 'fast-check'
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { describe, expect, test } from 'vitest'
import { estimates } from '../../../src/geometry/position/estimate.ts'
import { locate } from '../../../src/geometry/position/locate.ts'
import { regionHolds, regionsOf } from '../../../src/geometry/position/region.ts'
import type { Located } from '../../../src/geometry/position/sightings.ts'
import { uncertain } from '../../../src/measure/uncertain.ts'
import { tied, tieFrom } from './located.ts'
import { normal } from './normal.ts'

/** A house: front wall from (0, 0) to (40, 0), body toward negative y. */
const HOUSE = { A: [0, 0], B: [40, 0], C: [40, -28], D: [0, -28] } as const
type Corner = keyof typeof HOUSE
const CORNERS = Object.keys(HOUSE) as Corner[]
const distance = (corner: Corner, x: number, y: number): number =>
  Math.hypot(x - HOUSE[corner][0], y - HOUSE[corner][1])
const tiesTo = (
  [x, y]: readonly [number, number],
  u: number,
  errors: (corner: Corner) => number = () => 0,
  corners: readonly Corner[] = CORNERS,
): Located => ({
  half: 1,
  sightings: corners.map((it) => tieFrom(it, HOUSE[it], distance(it, x, y) + errors(it), u)),
})

const somewhere = fc.record({
  x: fc.double({ min: -120, max: 160, noNaN: true }),
  y: fc.double({ min: 3, max: 180, noNaN: true }),
})

test('true ties lead back to the place they were taken to', () => {
  fc.assert(
    fc.property(somewhere, ({ x, y }) => {
      const [best] = estimates(tiesTo([x, y], 0.1))
      expect(best!.x).toBeCloseTo(x, 4)
      expect(best!.y).toBeCloseTo(y, 4)
      expect(best!.misfit).toBeLessThan(1e-9)
    }),
  )
})

test('lands where a general-purpose Levenberg–Marquardt lands, with errors in every tie', () => {
  const draw = normal(11)
  for (let trial = 0; trial < 200; trial++) {
    const [x, y] = [-60 + 160 * Math.abs(Math.sin(trial)), 8 + 90 * Math.abs(Math.cos(3 * trial))]
    const us = CORNERS.map((_, i) => 0.1 + 0.1 * i)
    const read = CORNERS.map((it, i) => distance(it, x, y) + us[i]! * draw())
    const [best] = estimates({
      half: 1,
      sightings: CORNERS.map((it, i) => tieFrom(it, HOUSE[it], read[i]!, us[i]!)),
    })
    // Each tie over its own uncertainty, since the library does not converge with weights of its own.
    const reference = levenbergMarquardt(
      { x: CORNERS.map((_, i) => i), y: read.map((ft, i) => ft / us[i]!) },
      ([px, py]) =>
        (i) =>
          distance(CORNERS[i]!, px!, py!) / us[i]!,
      {
        initialValues: [x, y],
        maxIterations: 300,
        errorTolerance: 1e-14,
        gradientDifference: 1e-5,
        centralDifference: true,
      },
    )
    // Both stop at the same least squares; 0.0005 ft is far below any tape and far above either's last step.
    expect(best!.x).toBeCloseTo(reference.parameterValues[0]!, 3)
    expect(best!.y).toBeCloseTo(reference.parameterValues[1]!, 3)
    expect(best!.misfit).toBeLessThanOrEqual(reference.parameterError + 1e-6)
  }
})

describe('which tie is wrong', () => {
  /** Places all round the open side; one of four ties in turn is so far off. */
  function told(u: number, bias: number, trials = 1500) {
    const draw = normal(3)
    const tally = { none: 0, right: 0, wrong: 0, among: 0, missed: 0 }
    for (let i = 0; i < trials; i++) {
      const place = [-60 + 160 * ((i * 0.618) % 1), 8 + 90 * ((i * 0.755) % 1)] as const
      const bad = CORNERS[i % 4]!
      const { suspects } = locate(tiesTo(place, u, (it) => u * draw() + (it === bad ? bias : 0))).value
      if (suspects.length === 0) tally.none++
      else if (suspects.length === 1) tally[suspects[0] === bad ? 'right' : 'wrong']++
      else tally[suspects.includes(bad) ? 'among' : 'missed']++
    }
    return tally
  }

  test.each([0.1, 0.15, 0.2])(
    'a foot off in one of four, ties to ±2 × %f ft: the wrong one is hardly ever blamed',
    (u) => {
      const { wrong, missed, right, among } = told(u, 1)
      expect(wrong + missed).toBeLessThan(0.02 * (right + among))
    },
  )

  test('good ties are hardly ever doubted: once in a thousand', () => {
    const { none } = told(0.15, 0, 4000)
    // Poisson(4) is at most 12 with probability 0.9997.
    expect(4000 - none).toBeLessThanOrEqual(12)
  })

  test('three ties show that one is wrong, and name all three', () => {
    const { suspects, spare } = locate(
      tiesTo([20, 40], 0.1, (it) => (it === 'B' ? 2 : 0), ['A', 'B', 'C']),
    ).value
    expect([spare, suspects]).toEqual([1, ['A', 'B', 'C']])
  })

  test('where the evidence tells two apart, the one is named', () => {
    const { suspects } = locate(tiesTo([20, 25], 0.05, (it) => (it === 'A' ? 3 : 0))).value
    expect(suspects).toEqual(['A'])
  })
})

describe('a satellite fix takes part', () => {
  const fix = (x: number, y: number, u: number) =>
    ({
      kind: 'fix',
      name: 'fix',
      point: { x: uncertain(x, u, 'fix x'), y: uncertain(y, u, 'fix y') },
    }) as const
  const far = tied({ c: 12.2, a: 106.2, b: 116.8 }, { u: 0.5, half: null })

  test('it settles the side that no one said', () => {
    expect(estimates(far)).toHaveLength(2)
    const [best] = estimates(far)
    const both = estimates({ ...far, sightings: [...far.sightings, fix(best!.x, -Math.abs(best!.y), 8)] })
    expect(both.map(({ half }) => half)).toEqual([-1])
  })

  test('it shortens the arc that weak ties leave', () => {
    const half = { ...far, half: 1 } as const
    const [alone] = regionsOf(half)
    const [joint] = regionsOf({ ...half, sightings: [...half.sightings, fix(alone.best.x, alone.best.y, 5)] })
    expect(joint.lengthFt).toBeLessThan(0.5 * alone.lengthFt)
  })

  test('of ties and fixes together the region holds 95 in a hundred', () => {
    const draw = normal(12)
    const [x, y] = [-55, 90]
    let held = 0
    const trials = 1500
    for (let i = 0; i < trials; i++) {
      const located: Located = {
        half: 1,
        sightings: [
          tieFrom('A', [0, 0], Math.hypot(x, y) + 0.5 * draw(), 0.5),
          tieFrom('B', [12.2, 0], Math.hypot(x - 12.2, y) + 0.5 * draw(), 0.5),
          fix(x + 5 * draw(), y + 5 * draw(), 5),
        ],
      }
      if (regionHolds(located, x, y)) held++
    }
    expect(Math.abs(held / trials - 0.95)).toBeLessThan(0.02)
  })
})
