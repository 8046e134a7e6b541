import { COVERAGE, type Uncertain, uncertain } from './uncertain.ts'

/** How far each cause is from its mean, in its own standard uncertainties; a cause not named is at its mean. */
export type Shifts = ReadonlyMap<string, number>

export type Extremes = {
  readonly value: number
  readonly least: number
  readonly most: number
  /** What one standard deviation of each cause moves it by at the mean. */
  readonly shifts: ReadonlyMap<string, number>
}

/**
 * The least and the most that a figure comes to while its causes together stay within k standard uncertainties,
 * Σz² ≤ k². For a figure that is linear in its causes this is value ± k·u exactly; where it is not (a place along an
 * arc, a distance that can't go below zero) the slope at the value misleads and this does not. The point of the sphere
 * is found as in first-order reliability (Hasofer and Lind's fixed point, from memory): z ← ±k·∇f/|∇f| with the slope
 * taken again at each z. Deterministic; from the middle and from the best single cause, and the best end is kept.
 */
export function extremes(
  f: (shifts: Shifts) => number,
  causes: readonly string[],
  k: number = COVERAGE,
): Extremes {
  const at = (z: readonly number[]): number => f(new Map(causes.map((cause, i) => [cause, z[i]!])))
  const middle = causes.map(() => 0)
  const value = at(middle)
  const end = (sign: 1 | -1): number => sign * highest((z) => sign * at(z), middle, sign * value, k)
  const shifts = new Map(
    causes.map((cause, i) => [cause, (at(middle.with(i, STEP)) - at(middle.with(i, -STEP))) / (2 * STEP)]),
  )
  return causes.length === 0
    ? { value, least: value, most: value, shifts }
    : { value, least: end(-1), most: end(1), shifts }
}

const ROUNDS = 12
/** Step of a slope, in standard uncertainties: small against the arc, large against rounding. */
const STEP = 0.05

function highest(
  g: (z: readonly number[]) => number,
  middle: readonly number[],
  value: number,
  k: number,
): number {
  let best = value
  const axis = middle
    .flatMap((_, i) => [middle.with(i, k), middle.with(i, -k)])
    .map((z) => ({ z, height: g(z) }))
    .reduce((a, b) => (b.height > a.height ? b : a))
  best = Math.max(best, axis.height)
  for (const start of [middle, axis.z]) {
    let z = start
    for (let round = 0; round < ROUNDS; round++) {
      const slope = z.map((it, i) => (g(z.with(i, it + STEP)) - g(z.with(i, it - STEP))) / (2 * STEP))
      const steep = Math.hypot(...slope)
      if (!(steep > 0)) break
      const next = slope.map((it) => (k * it) / steep)
      const height = g(next)
      const moved = Math.hypot(...next.map((it, i) => it - z[i]!))
      z = next
      if (height > best) best = height
      if (moved < 1e-4) break
    }
  }
  return best
}

/**
 * A figure with the standard uncertainty that its extremes leave, shared among its causes as they move it: so that what a
 * working prints adds up to what it uses. Where no cause moves it at the mean, the uncertainty is one cause of its own.
 */
export function spread(value: number, u: number, { shifts }: Extremes, name: string): Uncertain {
  const slope = Math.hypot(...shifts.values())
  if (!(slope > 0)) return uncertain(value, u, name)
  return {
    value,
    causes: new Map(
      [...shifts].flatMap(([cause, shift]) => (shift === 0 ? [] : [[cause, (shift * u) / slope] as const])),
    ),
  }
}
