import { inchesToFt } from './units.ts'

/**
 * Tolerance of a metal measuring tape, ± inches, by the length measured: NIST Handbook 44 (2007) 5.52. The table is
 * printed for whole feet ("6 ft or less, 7 to 30, …"); a length between two rows takes the wider one.
 */
export const TAPE_TOLERANCE: readonly { readonly ftTo: number; readonly plusMinusIn: number }[] = [
  { ftTo: 6, plusMinusIn: 1 / 32 },
  { ftTo: 30, plusMinusIn: 1 / 16 },
  { ftTo: 55, plusMinusIn: 1 / 8 },
  { ftTo: 80, plusMinusIn: 3 / 16 },
  { ftTo: 100, plusMinusIn: 1 / 4 },
]

/**
 * Tolerance of one tape over a length, ± ft. The table ends at 100 ft: what is longer was taped in pieces of at most
 * 100 ft, and the same tape errs the same way in each, so the pieces' tolerances add.
 */
export function tapeToleranceFt(ft: number): number {
  const length = Math.abs(ft)
  const whole = Math.max(0, Math.ceil(length / 100) - 1)
  const rest = length - whole * 100
  const row = TAPE_TOLERANCE.find((entry) => rest <= entry.ftTo)!
  return inchesToFt(whole * TAPE_TOLERANCE.at(-1)!.plusMinusIn + row.plusMinusIn)
}
