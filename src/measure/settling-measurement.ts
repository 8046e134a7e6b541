import { budget, expanded, standardUncertainty, type Uncertain } from './uncertain.ts'

/**
 * One measurement that could be taken again, and what it would do. Either `after`, the result computed anew with that
 * one input as the better method would give it (exact, also where an instrument's cause is shared by other inputs); or
 * `replaces`: each named cause shrinks to `betterU / presentU` of itself (both in that cause's own unit, ft for a
 * length). A better u that is not smaller changes nothing: nobody would keep the worse of two readings.
 */
export type BetterMeasurement<What = string> =
  | { readonly what: What; readonly after: Uncertain }
  | { readonly what: What; readonly replaces: readonly Replacement[] }

export type Replacement = { readonly cause: string; readonly presentU: number; readonly betterU: number }

export type Settling<What = string> = {
  readonly what: What
  /** Expanded uncertainty of the result (k = 2, the result's unit) if only this were measured again. */
  readonly expandedUncertaintyAfter: number
  /** Share of the result's variance that this would take away, 0 to 1. */
  readonly varianceRemoved: number
  /** With this alone, and the value unchanged, the question would be settled. */
  readonly settles: boolean
}

/**
 * Which single measurement, taken again with a better method, would shrink the result's uncertainty most: from the
 * budget (JCGM 100:2008 7.2), most useful first (of equals, as given), those that would change nothing left out. `isSettled` is the question
 * at hand (say, that a comparison no longer answers `cannot-tell`), asked of the result as it would be.
 */
export function settlingMeasurement<What>(
  result: Uncertain,
  candidates: readonly BetterMeasurement<What>[],
  isSettled: (after: Uncertain) => boolean = () => false,
): readonly Settling<What>[] {
  const variance = standardUncertainty(result) ** 2
  return candidates
    .map((candidate) => {
      const { what } = candidate
      const after = 'after' in candidate ? candidate.after : withBetter(result, candidate.replaces)
      const u = standardUncertainty(after)
      return {
        what,
        expandedUncertaintyAfter: expanded(after),
        varianceRemoved: variance === 0 ? 0 : 1 - u ** 2 / variance,
        settles: isSettled(after),
      }
    })
    .filter((settling) => settling.varianceRemoved > 0)
    .sort((a, b) => b.varianceRemoved - a.varianceRemoved)
}

/** The result with some causes shrunk as their better measurement would shrink them. */
export function withBetter(result: Uncertain, replaces: readonly Replacement[]): Uncertain {
  const causes = new Map(result.causes)
  for (const { cause, presentU, betterU } of replaces) {
    const shift = causes.get(cause)
    if (shift === undefined || presentU <= 0) continue
    causes.set(cause, shift * Math.min(1, Math.max(0, betterU) / presentU))
  }
  return { value: result.value, causes }
}

/** The cause that carries the largest share of the variance; undefined when nothing is uncertain. */
export const largestCause = (result: Uncertain): string | undefined => budget(result)[0]?.cause
