import type { AgainstRange } from '../rules/apply/range-met.ts'
import type { Verified } from '../rules/citation.ts'
import type { Existing } from '../rules/values/requirement.ts'
import type { AgainstLeast, Occasion } from './asked-of-code.ts'
import type { Construction } from './construction.ts'
import type { Quantity } from './quantity.ts'

/** Why an answer about how a thing is built, and how often it is pumped, is what it is. */
export type ReasonOfBuilding =
  | {
      readonly is: 'construction'
      readonly construction: Construction
      readonly occasion: Occasion
      readonly found: Quantity
      readonly low: Quantity | null
      readonly high: Quantity | null
      readonly source: Verified
      readonly comes: AgainstRange
    }
  | {
      readonly is: 'compartments'
      readonly occasion: Occasion
      readonly count: number
      readonly minimum: number
      /** The first one's share of the length, where it is not what the rule requires. */
      readonly first: { readonly found: Quantity; readonly low: Quantity; readonly high: Quantity } | null
      readonly source: Verified
      readonly comes: AgainstLeast
    }
  /** A part that a rule requires whether or not a permit lists it. */
  | {
      readonly is: 'required-part'
      readonly occasion: Occasion
      readonly required: boolean
      readonly there: boolean
      /** In the words of the pack. */
      readonly detail: string | null
      readonly source: Verified
    }
  | {
      readonly is: 'accepted'
      readonly type: 'cesspool' | 'masonry-tank' | 'privy'
      readonly occasion: Occasion
      readonly accepted: boolean
      readonly detail: string | null
      /** What becomes of one that is there. */
      readonly existing: Existing | null
      readonly source: Verified
    }
  | {
      readonly is: 'pumping-interval'
      readonly since: Quantity
      readonly years: Quantity
      readonly people: number
      readonly source: Verified
      readonly due: boolean
    }
