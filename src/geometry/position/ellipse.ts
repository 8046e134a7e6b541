import { chiSquare2Quantile } from './chi-square.ts'
import { type Covariance, covariance, type Point } from './point.ts'

/**
 * The ellipse that holds the true place with the stated coverage, for errors near normal. Semi-axes in ft; `angleDeg`
 * is the direction of the major axis, from x toward y, in [0, 180).
 */
export type Ellipse = {
  readonly x: number
  readonly y: number
  readonly semiMajor: number
  readonly semiMinor: number
  readonly angleDeg: number
  readonly coverage: number
}

/** Variances along the principal axes, larger first, and the direction of the larger (radians from x toward y). */
export function principalAxes({ xx, xy, yy }: Covariance): {
  readonly major: number
  readonly minor: number
  readonly angle: number
} {
  const mean = (xx + yy) / 2
  const half = Math.hypot((xx - yy) / 2, xy)
  // The smaller root by the determinant: mean − half loses every digit when the ellipse is a needle.
  const major = mean + half
  const minor = major === 0 ? 0 : Math.min(major, Math.max(0, (xx * yy - xy * xy) / major))
  return { major, minor, angle: 0.5 * Math.atan2(2 * xy, xx - yy) }
}

/** Semi-axis = √(quantile of chi-square with 2 degrees of freedom · variance along that axis). */
export function errorEllipse(point: Point, coverage = 0.95): Ellipse {
  const { major, minor, angle } = principalAxes(covariance(point))
  const q = chiSquare2Quantile(coverage)
  const degrees = (angle * 180) / Math.PI
  return {
    x: point.x.value,
    y: point.y.value,
    semiMajor: Math.sqrt(q * major),
    semiMinor: Math.sqrt(q * minor),
    angleDeg: degrees < 0 ? degrees + 180 : degrees,
    coverage,
  }
}
