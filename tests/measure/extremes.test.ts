import fc from 'fast-check'
import { expect, test } from 'vitest'
import { extremes } from '../../src/measure/extremes.ts'

const slope = fc.double({ min: -5, max: 5, noNaN: true })

test('linear in its causes: value ± k·u exactly', () => {
  fc.assert(
    fc.property(slope, slope, slope, (a, b, c) => {
      const { least, most } = extremes(
        (z) => 7 + a * z.get('a')! + b * z.get('b')! + c * z.get('c')!,
        ['a', 'b', 'c'],
      )
      const U = 2 * Math.hypot(a, b, c)
      expect(most).toBeCloseTo(7 + U, 8)
      expect(least).toBeCloseTo(7 - U, 8)
    }),
  )
})

test('a distance from a place at an equal distance all round is least and most along its own direction', () => {
  const { least, most } = extremes((z) => Math.hypot(3 + z.get('x')!, 4 + z.get('y')!), ['x', 'y'])
  expect([least, most].map((it) => Math.round(it * 1e4) / 1e4)).toEqual([3, 7])
})

test('along an arc: what a search of the whole circle of shifts finds', () => {
  // A place 100 ft out, known along the circle to ±0.2 rad: its distance from (100, 0).
  const f = (z: ReadonlyMap<string, number>): number => {
    const [angle, r] = [0.5 + 0.1 * z.get('angle')!, 100 + 0.5 * z.get('r')!]
    return Math.hypot(r * Math.cos(angle) - 100, r * Math.sin(angle))
  }
  const all = Array.from({ length: 7200 }, (_, i) => (i * 2 * Math.PI) / 7200).map((t) =>
    f(
      new Map([
        ['angle', 2 * Math.cos(t)],
        ['r', 2 * Math.sin(t)],
      ]),
    ),
  )
  const { least, most } = extremes(f, ['angle', 'r'])
  expect(least).toBeCloseTo(Math.min(...all), 3)
  expect(most).toBeCloseTo(Math.max(...all), 3)
})

test('nothing uncertain: the value itself', () => {
  expect(extremes(() => 4, [])).toEqual({ value: 4, least: 4, most: 4, shifts: new Map() })
})
