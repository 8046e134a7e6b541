import { invariant } from '../base/invariant.ts'

/**
 * A value with what makes it uncertain: for each named independent cause, how far one standard deviation of that
 * cause moves the value (same unit as the value, signed). Two values that share a cause are correlated through it:
 * one tape whose error enters twice is one cause, and its shifts add before they are squared.
 *
 * Law of propagation of uncertainty, JCGM 100:2008 5.1.2 eq. (10) for independent causes; the shared-cause form is
 * 5.2.2 eq. (13) written by its causes (the JCGM's own way of avoiding covariances, F.1.2.3).
 * 5.1.2 was read; the numbers of the other clauses are from memory, here and below.
 */
export type Uncertain = {
  readonly value: number
  readonly causes: ReadonlyMap<string, number>
}

/** No uncertainty: a count, a constant, a value fixed by rule. */
export const exact = (value: number): Uncertain => ({ value, causes: new Map() })

/** One cause, given by its standard uncertainty (same unit as the value, not negative). */
export function uncertain(value: number, standardUncertainty: number, cause: string): Uncertain {
  invariant(Number.isFinite(value), `an uncertain value must be finite: ${value}`)
  invariant(
    standardUncertainty >= 0 && Number.isFinite(standardUncertainty),
    `standard uncertainty: ${standardUncertainty}`,
  )
  return { value, causes: standardUncertainty === 0 ? new Map() : new Map([[cause, standardUncertainty]]) }
}

/** Standard uncertainty u: the root sum of squares of the shifts. */
export function standardUncertainty(x: Uncertain): number {
  let sum = 0
  for (const shift of x.causes.values()) sum += shift * shift
  return Math.sqrt(sum)
}

/** Coverage factor k = 2: about 95 % for a value near normal (JCGM 100:2008 6.3.3). */
export const COVERAGE = 2

/** Expanded uncertainty U = k·u with k = 2. */
export const expanded = (x: Uncertain): number => COVERAGE * standardUncertainty(x)

/**
 * First-order propagation through any function: `value` is f at the inputs, `slopes[i]` is ∂f/∂x_i there.
 * Shifts of the same cause add with their signs.
 */
export function propagate(value: number, inputs: readonly Uncertain[], slopes: readonly number[]): Uncertain {
  const causes = new Map<string, number>()
  for (let i = 0; i < inputs.length; i++) {
    const slope = slopes[i]!
    if (slope === 0) continue
    for (const [cause, shift] of inputs[i]!.causes) {
      const total = (causes.get(cause) ?? 0) + slope * shift
      if (total === 0) causes.delete(cause)
      else causes.set(cause, total)
    }
  }
  return { value, causes }
}

export const plus = (a: Uncertain, b: Uncertain): Uncertain => propagate(a.value + b.value, [a, b], [1, 1])
export const minus = (a: Uncertain, b: Uncertain): Uncertain => propagate(a.value - b.value, [a, b], [1, -1])
export const times = (a: Uncertain, b: Uncertain): Uncertain =>
  propagate(a.value * b.value, [a, b], [b.value, a.value])
export const scale = (a: Uncertain, factor: number): Uncertain => propagate(a.value * factor, [a], [factor])
export const over = (a: Uncertain, b: Uncertain): Uncertain =>
  propagate(a.value / b.value, [a, b], [1 / b.value, -a.value / (b.value * b.value)])

/** What each cause contributes to the variance, largest first: the uncertainty budget (JCGM 100:2008 7.2). */
export function budget(
  x: Uncertain,
): readonly { readonly cause: string; readonly shift: number; readonly share: number }[] {
  const variance = standardUncertainty(x) ** 2
  return [...x.causes]
    .map(([cause, shift]) => ({ cause, shift, share: variance === 0 ? 0 : (shift * shift) / variance }))
    .sort((a, b) => b.share - a.share || (a.cause < b.cause ? -1 : 1))
}
