import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { tankCapacity } from '../../src/geometry/volume/tank-capacity.ts'
import { compareWithStated } from '../../src/measure/compare.ts'
import { measuredLength } from '../../src/measure/measured-length.ts'
import type { Method } from '../../src/measure/methods.ts'
import { largestCause, settlingMeasurement, withBetter } from '../../src/measure/settling-measurement.ts'
import {
  expanded,
  plus,
  standardUncertainty,
  type Uncertain,
  uncertain,
} from '../../src/measure/uncertain.ts'

const sum = [uncertain(0, 3, 'a'), uncertain(0, 4, 'b'), uncertain(100, 1, 'c')].reduce(plus)

test('the ranking is the budget’s, by what a better method would leave', () => {
  const ranking = settlingMeasurement(sum, [
    { what: 'a again', replaces: [{ cause: 'a', presentU: 1, betterU: 0 }] },
    { what: 'b again', replaces: [{ cause: 'b', presentU: 0.2, betterU: 0.1 }] },
    { what: 'c again', replaces: [{ cause: 'c', presentU: 5, betterU: 1 }] },
  ])
  // By hand, of a variance of 26: b halved takes 16 − 4, a gone takes 9, c to a fifth takes 1 − 0.04.
  expect(ranking.map(({ what }) => what)).toEqual(['b again', 'a again', 'c again'])
  expect(ranking.map(({ varianceRemoved }) => varianceRemoved * 26)).toEqual([
    expect.closeTo(12, 9),
    expect.closeTo(9, 9),
    expect.closeTo(0.96, 9),
  ])
  expect(ranking[0]!.expandedUncertaintyAfter).toBeCloseTo(2 * Math.sqrt(14), 12)
})

test('what would change nothing is not offered, nor is a worse method', () => {
  const none = settlingMeasurement(sum, [
    { what: 'worse', replaces: [{ cause: 'a', presentU: 1, betterU: 2 }] },
    { what: 'unknown', replaces: [{ cause: 'z', presentU: 1, betterU: 0 }] },
    { what: 'never uncertain', replaces: [{ cause: 'a', presentU: 0, betterU: 0 }] },
  ])
  expect(none).toEqual([])
})

test('a tank too rough to tell: which one reading, taken inside by tape, would settle it', () => {
  const tank = (ways: { readonly [K in 'length' | 'width' | 'depth']: Method }): Uncertain =>
    must(
      tankCapacity({
        kind: 'rectangular',
        length: measuredLength(8, ways.length, 'tape', 'length'),
        width: measuredLength(4, ways.width, 'tape', 'width'),
        liquidDepth: measuredLength(4, ways.depth, 'rod', 'depth'),
      }),
    ).value
  const asTaken = { length: 'inside-tape', width: 'probe', depth: 'sounding-rod' } as const
  const rule = { tolerance: 20, usableUncertainty: 60, unit: 'gal' }
  const verdict = (found: Uncertain) => compareWithStated(found, 1000, rule).value.verdict
  expect(verdict(tank(asTaken))).toBe('cannot-tell')
  const ranking = settlingMeasurement(
    tank(asTaken),
    [
      { what: 'width inside', after: tank({ ...asTaken, width: 'inside-tape' }) },
      { what: 'depth by rule', after: tank({ ...asTaken, depth: 'liquid-level-rule' }) },
      { what: 'length again', after: tank(asTaken) },
    ],
    (after) => verdict(after) !== 'cannot-tell',
  )
  expect(ranking.map(({ what, settles }) => [what, settles])).toEqual([
    ['width inside', true],
    ['depth by rule', false],
  ])
  expect(largestCause(tank(asTaken))).toBe('width')
  // Measured anew, it does what was foretold.
  expect(ranking[0]!.expandedUncertaintyAfter).toBe(expanded(tank({ ...asTaken, width: 'inside-tape' })))
})

describe('properties', () => {
  const shifts = fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { minLength: 1, maxLength: 6 })
  test('a better measurement never makes a result worse, and the ranking falls', () => {
    fc.assert(
      fc.property(shifts, shifts, (present, better) => {
        const result = present.map((u, i) => uncertain(1, u, `${i}`)).reduce(plus)
        const candidates = present.map((u, i) => ({
          what: `${i}`,
          replaces: [{ cause: `${i}`, presentU: u, betterU: better[i] ?? 0 }],
        }))
        const ranking = settlingMeasurement(result, candidates)
        for (const [i, it] of ranking.entries()) {
          expect(it.expandedUncertaintyAfter).toBeLessThanOrEqual(expanded(result))
          if (i > 0) expect(it.varianceRemoved).toBeLessThanOrEqual(ranking[i - 1]!.varianceRemoved)
        }
        const all = withBetter(
          result,
          candidates.flatMap(({ replaces }) => replaces),
        )
        expect(standardUncertainty(all)).toBeLessThanOrEqual(standardUncertainty(result))
        expect(all.value).toBe(result.value)
      }),
    )
  })
})
