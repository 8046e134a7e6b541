import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { dividedLength, firstCompartmentShare } from '../../../src/geometry/volume/compartments.ts'
import { tankCapacity } from '../../../src/geometry/volume/tank-capacity.ts'
import type { TwoCompartments } from '../../../src/geometry/volume/tank-shape.ts'
import { exact, standardUncertainty, type Uncertain, uncertain } from '../../../src/measure/uncertain.ts'
import { looseness, monteCarlo } from '../../measure/monte-carlo.ts'
import { redo, resultOf } from '../../measure/redo-step.ts'

const box = (length: Uncertain, width: Uncertain, depth: Uncertain): TwoCompartments['first'] => ({
  kind: 'rectangular',
  length,
  width,
  liquidDepth: depth,
})

describe('share of the first compartment', () => {
  test('by hand: 6 of 9 ft is two thirds, whatever the section', () => {
    const [w, d] = [uncertain(4, 0.03, 'w'), uncertain(4, 0.03, 'd')]
    const shape: TwoCompartments = {
      kind: 'two-compartments',
      first: box(exact(6), w, d),
      second: box(exact(3), w, d),
    }
    const { value, steps } = must(firstCompartmentShare(shape))
    expect(value.value).toBeCloseTo(2 / 3, 12)
    // Width and depth are the same in both, so their errors leave the share alone.
    expect(standardUncertainty(value)).toBeLessThan(1e-12)
    for (const step of steps) expect(redo(step)).toBeCloseTo(resultOf(step), 3)
  })
  test('its uncertainty by draws, through a partition', () => {
    const [L, p, t] = [uncertain(9.3, 0.05, 'L'), uncertain(6, 0.05, 'p'), uncertain(0.3, 0.02, 't')]
    const [w, d, e] = [uncertain(4, 0.03, 'w'), uncertain(4, 0.03, 'd'), uncertain(3.9, 0.03, 'e')]
    const [first, second] = must(dividedLength(L, p, t))
    const shape: TwoCompartments = {
      kind: 'two-compartments',
      first: box(first, w, d),
      second: box(second, w, e),
    }
    const drawn = monteCarlo(
      ([l = 0, a = 0, b = 0, c = 0, h = 0, g = 0]) => (a * c * h) / (a * c * h + (l - a - b) * c * g),
      [L, p, t, w, d, e],
    )
    const share = must(firstCompartmentShare(shape)).value
    expect(Math.abs(standardUncertainty(share) / drawn.standardDeviation - 1)).toBeLessThan(looseness())
  })
  test('between none and all, and the two shares come to one', () => {
    const ft = fc.double({ min: 1, max: 12, noNaN: true })
    fc.assert(
      fc.property(ft, ft, ft, ft, (a, b, w, d) => {
        const [one, two] = [box(exact(a), exact(w), exact(d)), box(exact(b), exact(w), exact(d))]
        const share = (first: typeof one, second: typeof one) =>
          must(firstCompartmentShare({ kind: 'two-compartments', first, second })).value.value
        expect(share(one, two) + share(two, one)).toBeCloseTo(1, 12)
        expect(share(one, two)).toBeGreaterThan(0)
        expect(share(one, two)).toBeLessThan(1)
      }),
    )
  })
})

test('a partition takes its own thickness from the tank, and where it stands cancels in the whole', () => {
  const [L, p, t] = [uncertain(9.3, 0.05, 'L'), uncertain(6, 0.05, 'p'), exact(0.3)]
  const [first, second] = must(dividedLength(L, p, t))
  expect([first.value, second.value]).toEqual([6, expect.closeTo(3, 12)])
  const whole = must(
    tankCapacity({
      kind: 'two-compartments',
      first: box(first, exact(4), exact(4)),
      second: box(second, exact(4), exact(4)),
    }),
  ).value
  expect(whole.value).toBeCloseTo((9 * 16 * 1728) / 231, 9)
  expect([...whole.causes.keys()]).toEqual(['L'])
})

test('what can’t stand is refused where it stands', () => {
  const pointers = (answer: { ok: true } | { ok: false; error: readonly { pointer: string }[] }) =>
    answer.ok ? [] : answer.error.map(({ pointer }) => pointer)
  expect(pointers(dividedLength(exact(8), exact(8), exact(0.3)))).toEqual(['/toPartition'])
  expect(pointers(dividedLength(exact(0), exact(-1), exact(0)))).toEqual([
    '/whole',
    '/toPartition',
    '/partition',
  ])
  const bad = box(exact(0), exact(4), exact(4))
  expect(pointers(firstCompartmentShare({ kind: 'two-compartments', first: bad, second: bad }))).toEqual([
    '/first/length',
    '/second/length',
  ])
})
