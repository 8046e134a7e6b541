import type { Covariance } from './point.ts'

/** Inverse of a symmetric 2×2 matrix; null where it is singular to working precision. */
export function inverse({ xx, xy, yy }: Covariance): Covariance | null {
  const determinant = xx * yy - xy * xy
  if (!(determinant > 1e-14 * xx * yy)) return null
  return { xx: yy / determinant, xy: -xy / determinant, yy: xx / determinant }
}
