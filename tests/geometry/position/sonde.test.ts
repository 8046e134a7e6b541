import fc from 'fast-check'
import { expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { covariance } from '../../../src/geometry/position/point.ts'
import { levelRun, sondeReading, USUAL_SONDE_LIMITS } from '../../../src/geometry/position/sonde.ts'
import { exact, standardUncertainty, uncertain } from '../../../src/measure/uncertain.ts'

const marked = { x: uncertain(10, 0.2, 'tape x'), y: uncertain(30, 0.2, 'tape y') }

test('limits become a rectangular law: u = a/√3 (JCGM 100:2008 4.3.7)', () => {
  const { depth, point } = sondeReading(6, marked, USUAL_SONDE_LIMITS, 'sonde').value
  expect(standardUncertainty(depth)).toBeCloseTo((0.6 + 1 / 12) / Math.sqrt(3), 12)
  expect(standardUncertainty(point.x)).toBeCloseTo(Math.hypot(0.2, 0.3 / Math.sqrt(3)), 12)
})

test('the deeper the sonde, the less is known of its depth and place', () => {
  const ft = fc.double({ min: 0.5, max: 15, noNaN: true })
  fc.assert(
    fc.property(ft, ft, (a, b) => {
      const [shallow, deep] = [Math.min(a, b), Math.max(a, b)].map(
        (it) => sondeReading(it, marked, USUAL_SONDE_LIMITS, 's').value,
      )
      expect(standardUncertainty(deep!.depth)).toBeGreaterThanOrEqual(standardUncertainty(shallow!.depth))
      expect(covariance(deep!.point).xx).toBeGreaterThanOrEqual(covariance(shallow!.point).xx)
    }),
  )
})

test('50 ft of cable that dropped 14 ft reach 48 ft along the ground', () => {
  const it = must(levelRun(uncertain(50, 0.5, 'counter'), exact(14))).value
  expect(it.value).toBe(48)
  expect(standardUncertainty(it)).toBeCloseTo((0.5 * 50) / 48, 12)
})

test('a drop longer than the cable is refused', () => {
  expect(levelRun(exact(10), exact(12))).toMatchObject({
    ok: false,
    error: expect.stringContaining('can’t have dropped'),
  })
})
