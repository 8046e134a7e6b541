import { mean, standardDeviation } from 'simple-statistics'
import type { Uncertain } from '../../src/measure/uncertain.ts'

/** Seeded uniform draws in [0, 1) (mulberry32): the same run every time. */
export function uniform(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

export type Drawn = {
  readonly mean: number
  readonly standardDeviation: number
  readonly sorted: Float64Array
}

/**
 * Propagation of distributions (JCGM 101:2008): every named cause is drawn once per trial, however many inputs it
 * enters, and the function is evaluated at what the inputs then are. The standard deviation of the outcome is what
 * first-order propagation must come near. `rectangular` draws causes from a rectangle of the same standard deviation.
 */
export function monteCarlo(
  f: (values: readonly number[]) => number,
  inputs: readonly Uncertain[],
  { trials = 60_000, seed = 20_080_101, rectangular = false } = {},
): Drawn {
  const next = uniform(seed)
  const draw = rectangular
    ? () => Math.sqrt(3) * (2 * next() - 1)
    : () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next())
  const causes = [...new Set(inputs.flatMap((input) => [...input.causes.keys()]))]
  const shifts = inputs.map((input) => causes.map((cause) => input.causes.get(cause) ?? 0))
  const outcomes = new Float64Array(trials)
  const values = inputs.map((input) => input.value)
  for (let trial = 0; trial < trials; trial++) {
    const errors = causes.map(draw)
    for (let i = 0; i < inputs.length; i++) {
      let value = inputs[i]!.value
      for (let c = 0; c < errors.length; c++) value += shifts[i]![c]! * errors[c]!
      values[i] = value
    }
    outcomes[trial] = f(values)
  }
  const list = outcomes as unknown as number[]
  return { mean: mean(list), standardDeviation: standardDeviation(list), sorted: outcomes.toSorted() }
}

/** Standard error of a standard deviation from so many trials is 1/√(2M): four of them, and 1 % for curvature. */
export const looseness = (trials = 60_000): number => 4 / Math.sqrt(2 * trials) + 0.01
