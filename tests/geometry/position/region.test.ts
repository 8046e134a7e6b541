import Flatten from '@flatten-js/core'
import { describe, expect, test } from 'vitest'
import { estimates } from '../../../src/geometry/position/estimate.ts'
import { polygonArea } from '../../../src/geometry/position/polygon.ts'
import { regionHolds, regionsOf } from '../../../src/geometry/position/region.ts'
import { groundInWords } from '../../../src/words/ground.ts'
import { GEOMETRIES, placeOf, tied } from './located.ts'
import { normal } from './normal.ts'

const TRIALS = 2000

/** How often the region of ties read with normal errors holds the place they were taken to. */
function coverage(two: (typeof GEOMETRIES)[number], u: number, uc: number, seed: number): number {
  const draw = normal(seed)
  const [x, y] = placeOf(two)
  let held = 0
  for (let i = 0; i < TRIALS; i++) {
    const read = { a: two.a + u * draw(), b: two.b + u * draw(), c: two.c + uc * draw() }
    if (regionHolds(tied(read, { u, uc }), x, y)) held++
  }
  return held / TRIALS
}

describe('a region said to hold 95 in a hundred does, wherever the place lies', () => {
  // Binomial at 2,000 trials: sd 0.0049. The bound itself is 0.01; three sd of chance are allowed on top of it for each single
  // geometry, and over all of them together, where chance is under 0.001, nothing.
  test.each([
    [0.5, 0],
    [0.577, 0.15],
  ])('ties to ±2 × %f ft, baseline to ±2 × %f ft', (u, uc) => {
    const shares = GEOMETRIES.map((two, i) => coverage(two, u, uc, 100 + i))
    for (const [i, share] of shares.entries())
      expect(Math.abs(share - 0.95), JSON.stringify(GEOMETRIES[i])).toBeLessThan(0.01 + 0.0147)
    const mean = shares.reduce((sum, it) => sum + it, 0) / shares.length
    expect(Math.abs(mean - 0.95)).toBeLessThan(0.01)
  })
})

test('the outline that is drawn holds what the region holds', () => {
  const draw = normal(5)
  for (const two of GEOMETRIES) {
    const [u, uc] = [0.4, 0.2]
    const [x, y] = placeOf(two)
    for (let i = 0; i < 4; i++) {
      const read = { a: two.a + u * draw(), b: two.b + u * draw(), c: two.c + uc * draw() }
      const located = tied(read, { u, uc })
      const [region] = regionsOf(located)
      // A place on the line itself is asked a hundredth of a foot off it, where inside and outside differ.
      const at = [x + 1.5 * draw(), Math.abs(y + 1.5 * draw()) + 0.01] as const
      const polygon = new Flatten.Polygon(region.ring.map(([px, py]) => Flatten.point(px, py)))
      const inside = polygon.contains(Flatten.point(...at))
      if (inside !== regionHolds(located, ...at)) {
        // Chords of an outline cut a little off: only hard by it may the two differ.
        const [distance] = Flatten.point(...at).distanceTo(polygon)
        expect(distance, JSON.stringify({ two, at })).toBeLessThan(0.05)
      }
    }
  }
})

test('where the sight lines cross well it is the ellipse of the first order: its area is π·χ²·√det C', () => {
  // At a right angle between the sight lines √det C = u².
  const [region] = regionsOf(tied({ a: 50, b: 50, c: 50 * Math.SQRT2 }, { u: 0.05 }))
  expect(polygonArea(region.ring) / (Math.PI * 5.991 * 0.05 * 0.05)).toBeCloseTo(1, 2)
  expect(region.form).toBe('spot')
})

describe('a shape that one can search', () => {
  const words = (two: (typeof GEOMETRIES)[number], half: 1 | null = 1) =>
    regionsOf(tied(two, { u: 0.5, half })).map(groundInWords)

  test('two corners close together, seen from afar: an arc', () => {
    expect(words({ c: 12.2, a: 106.2, b: 116.8 })).toEqual([
      expect.stringMatching(/^an arc about 9\d'-0" long and 1'-\d+" wide, from .* to .*$/),
    ])
  })

  test('sight lines that cross well: a spot', () => {
    expect(words({ c: 40, a: 30, b: 32 })[0]).toMatch(/^a (?:spot|strip) about \d+'/)
  })

  test('no side said: one shape on each side, and one across the line where they meet', () => {
    expect(words({ c: 40, a: 30, b: 32 }, null)).toHaveLength(2)
    expect(words({ c: 40, a: 20, b: 20.1 }, null)).toEqual([
      expect.stringMatching(/on both sides of the line of the wall$/),
    ])
  })

  test('ties that just fail to meet leave ground to search, and not a pinpoint', () => {
    const [region] = regionsOf(tied({ c: 40, a: 19, b: 19.6 }, { u: 0.5 }))
    expect(region.areaSqFt).toBeGreaterThan(1)
  })
})

test('a fix around the earth from the ties is estimated in as few steps as one beside them', () => {
  const far = (feet: number): number => {
    let asked = 0
    const counted = (value: number) => ({
      get value() {
        asked++
        return value
      },
      causes: new Map([['fix', 10]]),
    })
    estimates({
      half: null,
      sightings: [
        ...tied({ a: 20, b: 25, c: 30 }, { u: 0.25, uc: 0 }).sightings,
        { kind: 'fix', name: 'fix', point: { x: counted(feet), y: counted(1) } },
      ],
    })
    return asked
  }
  expect(far(6e7)).toBeLessThan(20 * far(60))
})
