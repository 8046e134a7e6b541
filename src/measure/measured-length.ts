import { invariant } from '../base/invariant.ts'
import { type HalfWidth, METHODS, type Method, type MethodPreset } from './methods.ts'
import { tapeToleranceFt } from './tape-tolerance.ts'
import { propagate, type Uncertain } from './uncertain.ts'
import { inchesToFt } from './units.ts'

/**
 * An error known only to lie within ± the half width is taken as equally likely anywhere there: u = a/√3
 * (JCGM 100:2008 4.3.7, rectangular distribution; clause number from memory).
 */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3)

/**
 * A length in ft with what its method makes uncertain. Lengths taken with one instrument share `instrumentCause` (so
 * its error enters each with the same sign and is correlated); `readingCause` is this reading's own and must be
 * named for this reading alone. `halfStepFt` is half of the last place written down: a reading is never taken to be
 * finer than it was written.
 */
export function measuredLength(
  ft: number,
  method: Method,
  instrumentCause: string,
  readingCause: string,
  {
    halfStepFt = 0,
    presets = METHODS,
  }: { readonly halfStepFt?: number; readonly presets?: { readonly [M in Method]: MethodPreset } } = {},
): Uncertain {
  invariant(Number.isFinite(ft), `a measured length must be finite: ${ft}`)
  const preset: MethodPreset = presets[method]
  const instrument = rectangular(halfWidthFt(preset.instrument, ft))
  const reading = rectangular(Math.max(halfWidthFt(preset.reading, ft), halfStepFt))
  const causes = new Map<string, number>()
  if (instrument > 0) causes.set(instrumentCause, instrument)
  if (reading > 0) causes.set(readingCause, (causes.get(readingCause) ?? 0) + reading)
  return { value: ft, causes }
}

/** The half width in ft at a length in ft. */
export function halfWidthFt(half: HalfWidth, ft: number): number {
  if ('inches' in half) return inchesToFt(half.inches)
  if ('shareOfLength' in half) return half.shareOfLength * Math.abs(ft)
  return tapeToleranceFt(ft)
}

/**
 * Inside length, ft, from an outside one and the walls at its two ends. One wall thickness given for both is one
 * cause that enters twice, so its error counts double and not by root sum of squares.
 */
export const insideFromOutside = (
  outside: Uncertain,
  wall: Uncertain,
  otherWall: Uncertain = wall,
): Uncertain =>
  propagate(outside.value - wall.value - otherWall.value, [outside, wall, otherWall], [1, -1, -1])
