import { describe, expect, test } from 'vitest'
import { anchoredPoint, anchorOf } from '../../../src/geometry/position/anchored.ts'
import { eastNorth } from '../../../src/geometry/position/frame.ts'
import type { GpsFix } from '../../../src/geometry/position/gps-fix.ts'
import { standardUncertainty, uncertain } from '../../../src/measure/uncertain.ts'

const fix = (latDeg: number, lonDeg: number, accuracyM = 1): GpsFix => ({
  latDeg,
  lonDeg,
  accuracyM,
  meaning: 'one-axis-sigma',
})
const A = fix(41.5, -90.125)
/** So many feet east and north of A. */
const at = (east: number, north: number, accuracyM = 1): GpsFix => {
  let [lat, lon] = [A.latDeg, A.lonDeg]
  for (let i = 0; i < 6; i++) {
    const off = eastNorth(A, { latDeg: lat, lonDeg: lon })
    lat += (north - off.north) / 364_000
    lon += (east - off.east) / 273_000
  }
  return fix(lat, lon, accuracyM)
}
const compass = uncertain(90, 3, 'compass')

describe('a fix in the frame of the corners', () => {
  test('B due east of A: what lies south lies out from the wall, on the right where it is east', () => {
    const anchor = anchorOf(A, null, compass)!
    const { x, y } = anchoredPoint(at(20, -35), anchor, 'tank').value
    expect([x.value, y.value]).toEqual([expect.closeTo(20, 2), expect.closeTo(35, 2)])
  })

  test('the error of the corner counts as much as the thing’s own', () => {
    const anchor = anchorOf(A, null, uncertain(90, 0, 'compass'))!
    const { x } = anchoredPoint(at(20, -35), anchor, 'tank').value
    expect(standardUncertainty(x)).toBeCloseTo(Math.SQRT2 / 0.3048, 3)
  })

  test('the fixes of both corners give the bearing, and the surer of the two is taken', () => {
    const far = at(0, 400)
    expect(anchorOf(A, far, null)!.bearingDeg.value).toBeCloseTo(0, 3)
    expect(anchorOf(A, far, compass)!.bearingDeg.value).toBeCloseTo(0, 3)
    expect(anchorOf(A, at(40, 0), compass)!.bearingDeg).toBe(compass)
    expect(anchorOf(A, null, null)).toBeNull()
    expect(anchorOf(A, A, null)).toBeNull()
  })

  test('of the bearing from two fixes the uncertainty is that of drawn ones', () => {
    // A generator of its own: the same draws on every machine.
    let seed = 7
    const uniform = () => {
      seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31
      return (seed + 0.5) / 2 ** 31
    }
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
    const [sigma, draws] = [1 / 0.3048, 4000]
    const { y } = anchoredPoint(at(150, -60), anchorOf(A, at(200, 0), null)!, 'tank').value
    const drawn = Array.from({ length: draws }, () => {
      const [ax, an, bx, bn, px, pn] = Array.from({ length: 6 }, () => sigma * normal())
      const theta = Math.atan2(200 + bx! - ax!, bn! - an!)
      const [e, n] = [150 + px! - ax!, -60 + pn! - an!]
      return e * Math.cos(theta) - n * Math.sin(theta)
    })
    const mean = drawn.reduce((a, b) => a + b) / draws
    const spread = Math.sqrt(drawn.reduce((sum, it) => sum + (it - mean) ** 2, 0) / draws)
    expect(standardUncertainty(y) / spread).toBeGreaterThan(0.95)
    expect(standardUncertainty(y) / spread).toBeLessThan(1.05)
  })
})
