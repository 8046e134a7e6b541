import { invariant } from '../../base/invariant.ts'
import { normalBelow } from '../../measure/normal.ts'

/**
 * Chi-square with two degrees of freedom, the law of the squared standardized distance in a plane. It has closed forms:
 * P(X > q) = exp(−q/2), and the value with probability p below it is −2·ln(1 − p): 5.991 for 95 %, 9.210 for 99 %.
 */
export const chiSquare2Above = (q: number): number => Math.exp(-q / 2)

export function chiSquare2Quantile(p: number): number {
  invariant(p > 0 && p < 1, `a coverage lies between 0 and 1: ${p}`)
  return -2 * Math.log1p(-p)
}

/**
 * P(X > q) for any whole number of degrees of freedom, up from 1 (twice the tail of the normal law) or 2 by
 * P(k + 2) = P(k) + (q/2)^(k/2)·exp(−q/2) / Γ(k/2 + 1): integration by parts, so exact.
 */
export function chiSquareAbove(q: number, degrees: number): number {
  invariant(Number.isInteger(degrees) && degrees > 0, `degrees of freedom: ${degrees}`)
  if (q <= 0) return 1
  if (q === Number.POSITIVE_INFINITY) return 0
  const odd = degrees % 2 === 1
  let above = odd ? 2 * normalBelow(-Math.sqrt(q)) : Math.exp(-q / 2)
  // Γ(3/2) = √π/2, Γ(2) = 1.
  let term = (odd ? Math.sqrt((2 * q) / Math.PI) : q / 2) * Math.exp(-q / 2)
  for (let k = odd ? 1 : 2; k < degrees; k += 2) {
    above += term
    term *= q / (k + 2)
  }
  return Math.min(1, above)
}

/** The value with probability p below it, by bisection of what lies above it. */
export function chiSquareQuantile(p: number, degrees: number): number {
  if (degrees === 2) return chiSquare2Quantile(p)
  let [low, high] = [0, 1]
  while (chiSquareAbove(high, degrees) > 1 - p) high *= 2
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (chiSquareAbove(middle, degrees) > 1 - p) low = middle
    else high = middle
  }
  return high
}
