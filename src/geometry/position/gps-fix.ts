import { invariant } from '../../base/invariant.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { standardUncertainty, type Uncertain, uncertain } from '../../measure/uncertain.ts'
import { M_PER_FT } from '../../measure/units.ts'
import { chiSquare2Quantile } from './chi-square.ts'
import { eastNorth, type FrameOnEarth, type Geodetic, toFrame } from './frame.ts'
import type { Point } from './point.ts'

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
  return worked(point, () => [sigmaStep(fix), turnedStep(east, north, frame.bearingDeg, point)])
}

const n = (value: number): string => {
  const text = printSignificant(value, 6)
  return text.startsWith('-') ? `(−${text.slice(1)})` : text
}

/** Each axis of a fix, ft, from the accuracy that its receiver states. */
const sigmaStep = ({ accuracyM, meaning }: GpsFix): Step => ({
  says: `Each axis, from a stated accuracy that means ${meaning.replaceAll('-', ' ')}`,
  formula: `σ = R${DIVIDED[meaning]} ÷ 0.3048`,
  numbers: `${n(accuracyM)}${DIVIDED[meaning]} ÷ ${M_PER_FT}`,
  result: `σ = ${printSignificant(axisSigmaM({ accuracyM, meaning }) / M_PER_FT, 6)} ft`,
})

/** So far east and north of corner A, turned into the frame of the house. */
export const turnedStep = (east: number, north: number, bearingDeg: Uncertain, { x, y }: Point): Step => {
  const theta = `${n(bearingDeg.value)} deg`
  return {
    says: `Along the wall from A, and off the wall, with a bearing from A to B of ${n(bearingDeg.value)}° ± ${printSignificant(2 * standardUncertainty(bearingDeg), 3)}°`,
    formula: 'x = E·sin θ + N·cos θ, y = E·cos θ − N·sin θ',
    numbers: `${n(east)} × sin(${theta}) + ${n(north)} × cos(${theta}), ${n(east)} × cos(${theta}) − ${n(north)} × sin(${theta})`,
    result: `x = ${printSignificant(x.value, 5)} ft, y = ${printSignificant(y.value, 5)} ft`,
  }
}

/** By what the stated radius is divided. */
const DIVIDED: { readonly [K in AccuracyMeaning]: string } = {
  '50-percent-circle': ' ÷ √(−2 × ln(0.50))',
  '68-percent-circle': ' ÷ √(−2 × ln(0.32))',
  '95-percent-circle': ' ÷ √(−2 × ln(0.05))',
  drms: ' ÷ √2',
  'one-axis-sigma': '',
}
