import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lineUp } from '../../../src/reading/family/line-up.ts'
import { affineThrough, applied, similarityThrough } from '../../../src/reading/family/transform.ts'

const LETTER = { widthPt: 612, heightPt: 792 }
const NAMES =
  'permit parcel address bedrooms capacity material length width depth trench gravel corner issued approved remarks installer county health division sewage'.split(
    ' ',
  )
const words = NAMES.map((text, index) => ({
  text,
  box: { x: 0.08 + 0.22 * (index % 4), y: 0.06 + 0.17 * Math.floor(index / 4), w: 0.1, h: 0.012 },
}))

/** The same sheet, laid askew, shifted and scaled, with some words misread and others written in. */
function copied({ turn, scale, dx, dy }: { turn: number; scale: number; dx: number; dy: number }) {
  return words
    .filter((_, index) => index % 7 !== 3)
    .map(({ text, box }) => {
      const [x, y] = [box.x * 612 * scale, (box.y + box.h / 2) * 792 * scale]
      const at = {
        x: (x * Math.cos(turn) - y * Math.sin(turn) + dx) / 612,
        y: (x * Math.sin(turn) + y * Math.cos(turn) + dy) / 792,
      }
      return { text, box: { x: at.x, y: at.y - (box.h * scale) / 2, w: box.w * scale, h: box.h * scale } }
    })
}

const laid = fc.record({
  turn: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
  scale: fc.double({ min: 0.8, max: 1.2, noNaN: true }),
  dx: fc.double({ min: -40, max: 40, noNaN: true }),
  dy: fc.double({ min: -40, max: 40, noNaN: true }),
})

describe('one page laid on another', () => {
  test('finds where a place of the one is on the other, however the copy was laid', () => {
    fc.assert(
      fc.property(laid, (how) => {
        const fit = lineUp(words, LETTER, copied(how), LETTER)
        expect(fit).not.toBeNull()
        const place = { x: 0.4, y: 0.5, w: 0.0001, h: 0.0001 }
        const [x, y] = [place.x * 612 * how.scale, place.y * 792 * how.scale]
        const there = fit!.onto(place)
        const x2 = x * Math.cos(how.turn) - y * Math.sin(how.turn) + how.dx
        const y2 = x * Math.sin(how.turn) + y * Math.cos(how.turn) + how.dy
        // Within a fifth of a line of type, on paper of 612 by 792 points.
        expect(Math.hypot(there.x * 612 - x2, there.y * 792 - y2)).toBeLessThan(2)
      }),
      { numRuns: 60 },
    )
  })

  test('does not where few words agree, or they agree on nothing', () => {
    expect(lineUp(words.slice(0, 5), LETTER, words, LETTER)).toBeNull()
    const shuffled = words.map(({ text }, index) => ({ text, box: words[(index * 7 + 3) % 20]!.box }))
    expect(lineUp(words, LETTER, shuffled, LETTER)).toBeNull()
  })
})

describe('transforms', () => {
  test('a similarity takes both its points where they belong', () => {
    const one = { from: { x: 0, y: 0 }, to: { x: 10, y: 5 } }
    const other = { from: { x: 100, y: 0 }, to: { x: 10, y: 205 } }
    const map = similarityThrough(one, other)!
    expect(applied(map, one.from)).toEqual(one.to)
    expect(applied(map, other.from).x).toBeCloseTo(10)
    expect(applied(map, other.from).y).toBeCloseTo(205)
    expect(similarityThrough(one, one)).toBeNull()
  })

  test('the affine transform of least squares is exact where the points are, and none on one line', () => {
    const map = { a: 1.1, b: 0.02, c: 3, d: -0.01, e: 0.95, f: -7 }
    const points = [0, 1, 2, 3, 4].map((n) => ({ x: n * 37, y: (n * n * 11) % 50 }))
    const fit = affineThrough(points.map((from) => ({ from, to: applied(map, from) })))!
    for (const key of ['a', 'b', 'c', 'd', 'e', 'f'] as const) expect(fit[key]).toBeCloseTo(map[key], 9)
    expect(affineThrough([0, 1, 2].map((n) => ({ from: { x: n, y: n }, to: { x: n, y: n } })))).toBeNull()
  })
})
