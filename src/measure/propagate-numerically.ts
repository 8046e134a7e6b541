import { propagate, type Uncertain } from './uncertain.ts'

/**
 * Propagation through any smooth function with slopes by central differences: the check beside every analytic one,
 * and the way for functions whose slopes would be longer than the function. The step ∛ε·|x| balances rounding against
 * curvature: relative error of a slope near 1e-10. Where f is not finite on one side (a section just full), the
 * one-sided slope is taken.
 */
export function propagateNumerically(
  f: (values: readonly number[]) => number,
  inputs: readonly Uncertain[],
): Uncertain {
  const at = inputs.map((input) => input.value)
  return propagate(f(at), inputs, slopesNumerically(f, at))
}

/** ∂f/∂x_i at a point, by central differences. */
export function slopesNumerically(
  f: (values: readonly number[]) => number,
  at: readonly number[],
): readonly number[] {
  return at.map((value, i) => {
    const step = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(value), 1e-3)
    const above = f(at.with(i, value + step))
    const below = f(at.with(i, value - step))
    if (Number.isFinite(above) && Number.isFinite(below)) return (above - below) / (2 * step)
    return Number.isFinite(above) ? (above - f(at)) / step : (f(at) - below) / step
  })
}
