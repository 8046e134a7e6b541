import type { StatusWord } from '../../../reconcile/status.ts'
import type { ToldHere } from '../../../store/deliveries.ts'
import { VOICES } from '../../../words/agent/status.ts'

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
      readonly status: { readonly word: StatusWord }
    }
  }
  return {
    parcel: parcelNumber,
    now: VOICES.en.word[data.status.word],
    before: data.before && VOICES.en.word[data.before],
    sentence: VOICES.en.sentence[data.status.word],
    at: madeAt,
  }
}
