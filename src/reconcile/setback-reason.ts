import type { Part } from '../records/part.ts'
import type { Verified } from '../rules/citation.ts'
import type { AgainstLeast, Occasion } from './asked-of-code.ts'
import type { DistanceBy, KeptFrom } from './kept-from.ts'
import type { Quantity } from './quantity.ts'

/** A distance that a permit states, against the one that was taped. */
export type DistanceRecordReason = {
  readonly is: 'distance-record'
  readonly to: KeptFrom
  readonly found: Quantity
  readonly recorded: Quantity
  readonly comes: 'agrees' | 'nearer' | 'farther'
}

/** Why a distance is enough, short or too close to call. */
export type SetbackReason = {
  readonly is: 'setback'
  /** The well or the house that it is measured to, where that has a place; null where the distance was taped or stated. */
  readonly from: Part | null
  readonly how: DistanceBy
  readonly distance: Quantity
  /**
   * Null where it is one distance. Where size and bearing leave a span: `at-least` and `at-most` say which end of it this
   * is, `size-unknown` that its edge may be nearer by any distance.
   */
  readonly span: 'at-least' | 'at-most' | 'size-unknown' | null
  readonly least: Quantity
  readonly source: Verified
  /** What it is kept from. */
  readonly to: KeptFrom
  /** `today`, where today's law is another; null of the permit's day. */
  readonly occasion?: Occasion
  /** A side is not said, and the nearer of the possible places counts. */
  readonly ambiguous: boolean
  readonly unplaced: readonly Part[]
  /** Whose distance it is, where it is not the code's. */
  readonly by?: 'lender'
  readonly comes: AgainstLeast
}
