import type { Part } from '../records/part.ts'
import type { Verified } from '../rules/citation.ts'
import type { AgainstLeast, Occasion } from './asked-of-code.ts'
import type { Quantity } from './quantity.ts'

/** Why a distance is enough, short or too close to call. */
export type SetbackReason = {
  readonly is: 'setback'
  readonly from: Part
  readonly distance: Quantity
  /**
   * Null where it is one distance. Where size and bearing leave a span: `at-least` and `at-most` say which end of it this
   * is, `size-unknown` that its edge may be nearer by any distance.
   */
  readonly span: 'at-least' | 'at-most' | 'size-unknown' | null
  readonly least: Quantity
  readonly source: Verified
  /** What it is kept from. */
  readonly to: 'well' | 'building'
  /** `today`, where today's law is another; null of the permit's day. */
  readonly occasion?: Occasion
  /** A side is not said, and the nearer of the possible places counts. */
  readonly ambiguous: boolean
  readonly unplaced: readonly Part[]
  /** Whose distance it is, where it is not the code's. */
  readonly by?: 'lender'
  readonly comes: AgainstLeast
}
