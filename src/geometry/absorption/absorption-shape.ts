import type { Uncertain } from '../../measure/uncertain.ts'

/**
 * What takes up the effluent. Lengths in ft with their uncertainty. `effectiveDepth` is the height of wall that takes
 * effluent: for a pit from the inlet down, for a trench or a bed the gravel below the pipe.
 */
export type AbsorptionShape = Pits | Trenches | Bed | Chambers | Mound

/** Seepage pits or dry wells, alike. */
export type Pits = {
  readonly kind: 'pits'
  readonly diameter: Uncertain
  readonly effectiveDepth: Uncertain
  readonly count: number
}

/** Trenches of one width, each with its own length. */
export type Trenches = {
  readonly kind: 'trenches'
  readonly width: Uncertain
  readonly lengths: readonly Uncertain[]
  readonly effectiveDepth?: Uncertain
}

export type Bed = {
  readonly kind: 'bed'
  readonly length: Uncertain
  readonly width: Uncertain
  readonly effectiveDepth?: Uncertain
}

/**
 * Rows of chambers. `width` is the nominal open bottom. `credit` multiplies the bottom area where an approval lets a
 * chamber stand for more than its own bottom (1 where none does); it is the approval's, so it has no uncertainty.
 */
export type Chambers = {
  readonly kind: 'chambers'
  readonly width: Uncertain
  readonly lengths: readonly Uncertain[]
  readonly credit: number
}

/** Mound, by the basal area that takes the effluent (level ground: the whole; a slope: from the bed downhill). */
export type Mound = {
  readonly kind: 'mound'
  readonly basalLength: Uncertain
  readonly basalWidth: Uncertain
}

/**
 * Which surfaces a rule counts. `sidewall` of a trench is its two long sides; `bottom-and-one-foot-of-sidewall` is the
 * bottom and a strip 1 ft high all round, the ends included (the Texas way, 30 TAC 285.91).
 */
export const COUNTED_SURFACES = [
  'bottom',
  'sidewall',
  'bottom-and-sidewall',
  'bottom-and-one-foot-of-sidewall',
] as const
export type CountedSurface = (typeof COUNTED_SURFACES)[number]

/**
 * The surface that counts of one shape under a table: a pit's is its sidewall, whatever the table counts of trenches (EPA
 * 625/1-80-012, 1980, p. 236), and a table for pits leaves trenches and beds their bottom.
 */
export function surfaceThatCounts(kind: AbsorptionShape['kind'], table: CountedSurface): CountedSurface {
  if (kind === 'pits') return 'sidewall'
  return table === 'sidewall' ? 'bottom' : table
}
