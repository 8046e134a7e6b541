import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { propagate, standardUncertainty, type Uncertain } from '../../measure/uncertain.ts'
import { chiSquare2Above, chiSquare2Quantile } from './chi-square.ts'
import { principalAxes } from './ellipse.ts'
import { type Covariance, covariance, offset, type Point } from './point.ts'

export type Separation = {
  /** How far apart, ft. */
  readonly distance: Uncertain
  /** From recorded to found, ft: along x and along y. */
  readonly offset: Point
  /** Squared standardized distance D² = dᵀ·C⁻¹·d; infinite where the positions are exact and differ. */
  readonly squared: number
  /** Probability that measurement alone puts two readings of one place this far apart or farther. */
  readonly p: number
  readonly coverage: number
  readonly verdict: 'same-place' | 'elsewhere'
  /** The least distance in that direction that these measurements could have called a difference, ft. */
  readonly leastTellableFt: number
}

/**
 * Where the record puts a thing against where it was found. D² = dᵀ·C⁻¹·d with C the covariance of the difference
 * follows chi-square with 2 degrees of freedom when both are one place; beyond the quantile at `coverage` it is
 * elsewhere. Causes that both positions share (one baseline) are counted once, with their signs.
 */
export function distanceBetween(recorded: Point, found: Point, coverage = 0.95): Worked<Separation> {
  const d = offset(recorded, found)
  const [dx, dy] = [d.x.value, d.y.value]
  const far = Math.hypot(dx, dy)
  const c = covariance(d)
  const { major, angle } = principalAxes(c)
  // At one and the same place no direction is singled out: the widest one is the honest one.
  const [nx, ny] = far === 0 ? [Math.cos(angle), Math.sin(angle)] : [dx / far, dy / far]
  const distance = propagate(far, [d.x, d.y], [nx, ny])
  const squared = standardized(dx, dy, c)
  const p = chiSquare2Above(squared)
  const quantile = chiSquare2Quantile(coverage)
  const unit = standardized(nx, ny, c)
  const value: Separation = {
    distance,
    offset: d,
    squared,
    p,
    coverage,
    verdict: squared > quantile ? 'elsewhere' : 'same-place',
    leastTellableFt: major === 0 ? 0 : Math.sqrt(quantile / unit),
  }
  return worked(value, () => working(value, c, quantile))
}

/** vᵀ·C⁻¹·v; along a direction in which nothing is uncertain any difference is infinite. */
function standardized(vx: number, vy: number, c: Covariance): number {
  if (vx === 0 && vy === 0) return 0
  const { major, minor, angle } = principalAxes(c)
  const along = vx * Math.cos(angle) + vy * Math.sin(angle)
  const across = vy * Math.cos(angle) - vx * Math.sin(angle)
  const tiny = 1e-9 * Math.hypot(vx, vy)
  const part = (length: number, variance: number): number =>
    Math.abs(length) <= tiny ? 0 : (length * length) / variance
  return part(along, major) + part(across, minor)
}

const n = (value: number): string => (Number.isFinite(value) ? printSignificant(value, 4) : '∞')

function working(it: Separation, c: Covariance, quantile: number): readonly Step[] {
  const { x, y } = it.offset
  const percent = printSignificant(it.coverage * 100, 3)
  return [
    {
      says: 'Distance between the recorded and the found position',
      formula: 'd = √(Δx² + Δy²)',
      numbers: `√(${n(x.value)}² + ${n(y.value)}²)`,
      result: `${n(it.distance.value)} ft, u = ${n(standardUncertainty(it.distance))} ft`,
    },
    {
      says: 'The same in units of its own uncertainty',
      formula: 'D² = dᵀ·C⁻¹·d',
      numbers: `d = (${n(x.value)}, ${n(y.value)}) ft, C = [${n(c.xx)} ${n(c.xy)}; ${n(c.xy)} ${n(c.yy)}] ft²`,
      result: n(it.squared),
    },
    {
      says: `Against chi-square with 2 degrees of freedom at ${percent} %`,
      formula: 'elsewhere when D² > −2·ln(1 − coverage)',
      numbers: `${n(it.squared)} against ${n(quantile)}`,
      result:
        it.verdict === 'elsewhere' ? 'not the same place' : 'one place, as far as these measurements tell',
    },
  ]
}
