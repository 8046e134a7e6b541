import { invariant } from '../../base/invariant.ts'
import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import {
  budget,
  plus,
  propagate,
  scale,
  standardUncertainty,
  type Uncertain,
} from '../../measure/uncertain.ts'
import { covariance, drms, type Point } from './point.ts'
import { type TiesApart, tiesApart, tiesGap } from './ties-apart.ts'

/** Sight lines should cross between 30° and 150°; outside that a small error in a tie moves the place far (common practice). */
export const SOUND_ANGLE_DEG = 30

export type TwoTieFix = {
  /** The root on the open side of the wall that holds A and B, and the one on the house's side. */
  readonly away: Point
  readonly toward: Point
  /** Angle at the place between the sight lines to A and to B, degrees. */
  readonly sightAngleDeg: number
  /** `flat`: the place lies on the line through A and B as nearly as can be told, and both roots are one. */
  readonly geometry: 'sound' | 'weak' | 'flat'
  readonly drmsFt: number
}

/**
 * Two taped distances from the corners A (origin) and B (at x = c) to a place. Feet.
 *
 *   x = (a² − b² + c²) / 2c      y = ±√(a² − x²)
 *   ∂x/∂a = a/c   ∂x/∂b = −b/c   ∂x/∂c = 1 − x/c
 *
 * First-order propagation; for equal independent ties and a known baseline it is the surveyor's σ√2/|sin γ|. Where y²
 * is not clearly above its own uncertainty the square root has no useful slope: its width is then taken from √u(y²).
 * Ties that miss by no more than their expanded uncertainty touch; by more is an issue with its possible fixes.
 */
export function positionFromTwoTies(
  a: Uncertain,
  b: Uncertain,
  baseline: Uncertain,
): Result<Worked<TwoTieFix>, TiesApart> {
  const c = baseline.value
  invariant(
    a.value > 0 && b.value > 0 && c > 0,
    `ties and baseline are lengths above zero: ${[a.value, b.value, c]}`,
  )
  const lengths = { a: a.value, b: b.value, baseline: c }
  const gap = tiesGap(lengths)
  if (gap > 2 * gapUncertainty(a, b, baseline)) return err(tiesApart(lengths))

  const inputs = [a, b, baseline]
  const x0 = (a.value ** 2 - b.value ** 2 + c * c) / (2 * c)
  const xSlopes = [a.value / c, -b.value / c, 1 - x0 / c] as const
  const x = propagate(x0, inputs, xSlopes)

  const square = propagate(a.value ** 2 - x0 * x0, inputs, [
    2 * (a.value - x0 * xSlopes[0]),
    -2 * x0 * xSlopes[1],
    -2 * x0 * xSlopes[2],
  ])
  const [y, flat] = rootOf(square)
  const away = { x, y }
  const toward = { x, y: scale(y, -1) }
  const angle = sightAngle(x0, y.value, c)
  const weak = angle < SOUND_ANGLE_DEG || angle > 180 - SOUND_ANGLE_DEG
  const drmsFt = drms(covariance(away))
  const value: TwoTieFix = {
    away,
    toward,
    sightAngleDeg: angle,
    geometry: flat ? 'flat' : weak ? 'weak' : 'sound',
    drmsFt,
  }
  return ok(worked(value, () => working(a, b, baseline, value)))
}

/** u of |b − a| − c or c − a − b, whichever is the one in question. */
function gapUncertainty(a: Uncertain, b: Uncertain, baseline: Uncertain): number {
  const different = Math.abs(b.value - a.value) - baseline.value >= baseline.value - a.value - b.value
  const reach = different
    ? propagate(0, [a, b], b.value > a.value ? [-1, 1] : [1, -1])
    : scale(plus(a, b), -1)
  return standardUncertainty(propagate(0, [reach, baseline], [1, different ? -1 : 1]))
}

/** √ of a square that may be zero or, by its own uncertainty, a little below. */
function rootOf(square: Uncertain): readonly [Uncertain, boolean] {
  const u = standardUncertainty(square)
  const root = Math.sqrt(Math.max(0, square.value))
  const flat = square.value < 2 * u || root === 0
  const slope = root === 0 && u === 0 ? 0 : 1 / (2 * Math.max(root, Math.sqrt(u) / 2))
  return [propagate(root, [square], [slope]), flat]
}

/** Between (x, y) and (x − c, y), whose cross product is c·y; 180° between the corners, 0° beyond them on the line. */
const sightAngle = (x: number, y: number, c: number): number =>
  (Math.atan2(c * Math.abs(y), x * (x - c) + y * y) * 180) / Math.PI

const n = (value: number): string => printSignificant(value, 5)

function working(a: Uncertain, b: Uncertain, baseline: Uncertain, fix: TwoTieFix): readonly Step[] {
  const { x, y } = fix.away
  return [
    {
      says: 'Along the wall from corner A toward corner B',
      formula: 'x = (a² − b² + c²) / (2·c)',
      numbers: `(${n(a.value)}² − ${n(b.value)}² + ${n(baseline.value)}²) / (2 × ${n(baseline.value)})`,
      result: `${n(x.value)} ft`,
    },
    uncertaintyOf('x', x),
    {
      says: 'Off the wall: one place on the open side, its mirror image on the house’s side',
      formula: 'y = ±√(a² − |x|²)',
      numbers: `±√(${n(a.value)}² − ${n(Math.abs(x.value))}²)`,
      result: `±${n(y.value)} ft`,
    },
    uncertaintyOf('y', y),
    {
      says: 'Angle between the two sight lines',
      formula: 'γ = atan2(c·|y|, x·(x − c) + y²)',
      numbers: `x = ${n(x.value)}, y = ${n(y.value)}, c = ${n(baseline.value)}`,
      result: `${fix.sightAngleDeg.toFixed(1)}° (${fix.geometry})`,
    },
    {
      says: 'How well the place is known',
      formula: 'DRMS = √(u(x)² + u(y)²)',
      numbers: `√(${n(standardUncertainty(x))}² + ${n(standardUncertainty(y))}²)`,
      result: `${n(fix.drmsFt)} ft`,
    },
  ]
}

/** u with the terms it is the sum of: what one standard deviation of each tie, the baseline and their tape moves it by. */
const uncertaintyOf = (name: string, it: Uncertain): Step => {
  const shifts = budget(it).map(({ shift }) => `${n(Math.abs(shift))}²`)
  return {
    says: `Standard uncertainty of ${name}, from what one standard deviation of each cause moves it by`,
    formula: `u(${name}) = √(Σ shift²)`,
    numbers: shifts.length === 0 ? '√(0²)' : `√(${shifts.join(' + ')})`,
    result: `${n(standardUncertainty(it))} ft`,
  }
}
