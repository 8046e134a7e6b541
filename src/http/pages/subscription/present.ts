import type { StatusWord } from '../../../reconcile/status.ts'
import type { ToldHere } from '../../../store/deliveries.ts'
import { STATUS_HEAD } from '../words/status.ts'

export type ChangeLine = {
  readonly parcel: string
  readonly now: string
  /** Null where there was no status before. */
  readonly before: string | null
  readonly sentence: string
  readonly at: Date
}

/** What the message says that was written when the status changed. */
export function presentChange({ parcelNumber, body, madeAt }: ToldHere): ChangeLine {
  const { data } = JSON.parse(body) as {
    readonly data: {
      readonly before: StatusWord | null
      readonly status: { readonly word: StatusWord; readonly sentence: string }
    }
  }
  return {
    parcel: parcelNumber,
    now: STATUS_HEAD[data.status.word],
    before: data.before && STATUS_HEAD[data.before],
    sentence: data.status.sentence,
    at: madeAt,
  }
}
