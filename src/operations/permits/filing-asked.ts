import type { FilingAct, FilingReason } from '../../records/filing.ts'

/** A change of how a permit is filed, as it is asked for. */
export type FilingChangeAsked = {
  readonly id: string
  /** The revision that was read; undefined where whatever is there is to be changed. */
  readonly version: number | undefined
  readonly act: FilingAct
  readonly reason: FilingReason
  /** The reviewer's own words; they stay inside. */
  readonly note: string | null
  /** Of a move: the parcel by number or id, and which of its systems where it has several. */
  readonly toParcel?: string | undefined
  readonly system?: string | undefined
  /** Of a merger: the permit that stays. */
  readonly into?: string | undefined
}
