import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { positionFromTwoTies } from '../../../src/geometry/position/two-ties.ts'
import { exact } from '../../../src/measure/uncertain.ts'

const { circle, point } = Flatten

test('two ties meet where a plane-geometry library says two circles meet, and miss when it says so', () => {
  const ft = fc.double({ min: 5, max: 200, noNaN: true })
  fc.assert(
    fc.property(ft, ft, fc.double({ min: 8, max: 100, noNaN: true }), (a, b, c) => {
      const gap = Math.max(Math.abs(b - a) - c, c - a - b)
      fc.pre(Math.abs(gap) > 1e-3)
      const crossings = circle(point(0, 0), a).intersect(circle(point(c, 0), b))
      const ours = positionFromTwoTies(exact(a), exact(b), exact(c))
      expect(ours.ok).toBe(crossings.length === 2)
      if (!ours.ok) return
      const { away, toward } = ours.value.value
      const [low, high] = crossings.sort((p, q) => p.y - q.y)
      expect(away.x.value).toBeCloseTo(high!.x, 4)
      expect(away.y.value).toBeCloseTo(high!.y, 4)
      expect(toward.y.value).toBeCloseTo(low!.y, 4)
    }),
    { numRuns: 500 },
  )
})
