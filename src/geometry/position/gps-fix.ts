import { invariant } from '../../base/invariant.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { standardUncertainty, uncertain } from '../../measure/uncertain.ts'
import { M_PER_FT } from '../../measure/units.ts'
import { chiSquare2Quantile } from './chi-square.ts'
import { eastNorth, type FrameOnEarth, type Geodetic, toFrame } from './frame.ts'
import { covariance, drms, type Point } from './point.ts'

/**
 * What a receiver's "accuracy" means. Makers differ: handset systems word theirs as a radius of 68 %, the web's
 * Geolocation interface asks for one of 95 % (both from memory), a survey receiver may state DRMS or one sigma of each
 * axis. A figure with no meaning said is taken as 68 %: the larger error.
 */
export const ACCURACY_MEANINGS = [
  '50-percent-circle',
  '68-percent-circle',
  '95-percent-circle',
  'drms',
  'one-axis-sigma',
] as const
export type AccuracyMeaning = (typeof ACCURACY_MEANINGS)[number]

export type GpsFix = Geodetic & { readonly accuracyM: number; readonly meaning: AccuracyMeaning }

/**
 * Standard uncertainty of each axis, m, for a circular normal error: P(r < R) = 1 − exp(−R²/2σ²), so
 * σ = R/√(quantile of chi-square with 2 degrees of freedom): R₅₀ = 1.177σ, R₆₈ = 1.510σ, R₉₅ = 2.448σ, DRMS = √2·σ.
 */
export function axisSigmaM({ accuracyM, meaning }: Pick<GpsFix, 'accuracyM' | 'meaning'>): number {
  invariant(accuracyM >= 0 && Number.isFinite(accuracyM), `accuracy: ${accuracyM}`)
  switch (meaning) {
    case '50-percent-circle':
      return accuracyM / Math.sqrt(chiSquare2Quantile(0.5))
    case '68-percent-circle':
      return accuracyM / Math.sqrt(chiSquare2Quantile(0.68))
    case '95-percent-circle':
      return accuracyM / Math.sqrt(chiSquare2Quantile(0.95))
    case 'drms':
      return accuracyM / Math.SQRT2
    case 'one-axis-sigma':
      return accuracyM
  }
}

/**
 * A fix in the local frame, ft. `name` tells its causes from those of another fix: what two fixes of one receiver
 * share (the sky of that hour) isn't known and isn't assumed.
 */
export function positionFromGps(fix: GpsFix, frame: FrameOnEarth, name: string): Worked<Point> {
  const { east, north } = eastNorth(frame.cornerA, fix)
  const sigma = axisSigmaM(fix) / M_PER_FT
  const point = toFrame(
    frame,
    uncertain(east, sigma, `${name} east`),
    uncertain(north, sigma, `${name} north`),
  )
  const n = (value: number): string => printSignificant(value, 4)
  return worked(point, () => [
    {
      says: `Each axis, from a stated accuracy that means ${fix.meaning.replaceAll('-', ' ')}`,
      formula: SIGMA_FORMULAS[fix.meaning],
      numbers: `R = ${n(fix.accuracyM)} m`,
      result: `σ = ${n(sigma)} ft`,
    },
    {
      says: 'Turned into the frame of the house',
      formula: 'x = E·sin θ + N·cos θ, y = E·cos θ − N·sin θ',
      numbers: `E = ${n(east)}, N = ${n(north)} ft, θ = ${n(frame.bearingDeg.value)}° ± ${n(2 * standardUncertainty(frame.bearingDeg))}°`,
      result: `x = ${n(point.x.value)}, y = ${n(point.y.value)} ft, DRMS ${n(drms(covariance(point)))} ft`,
    },
  ])
}

const SIGMA_FORMULAS: { readonly [K in AccuracyMeaning]: string } = {
  '50-percent-circle': 'σ = R / √(−2·ln 0.50)',
  '68-percent-circle': 'σ = R / √(−2·ln 0.32)',
  '95-percent-circle': 'σ = R / √(−2·ln 0.05)',
  drms: 'σ = R / √2',
  'one-axis-sigma': 'σ = R',
}
