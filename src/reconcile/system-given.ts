import type { Share } from '../records/system.ts'

/** What is known of a system beside its papers; absent where it is a parcel's own and the only one there. */
export type SystemGiven = {
  readonly id: string
  /** 0 where nothing was said of it. Said anew, it is compared anew. */
  readonly revision: number
  /** Another system serves a parcel that this one serves. */
  readonly oneOfSeveral: boolean
  /** It lies on a parcel that it does not serve. */
  readonly liesElsewhere: boolean
  /** One for each parcel that it serves. */
  readonly serves: readonly Share[]
}
