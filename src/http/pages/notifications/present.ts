import type { ParcelStatus, StatusWord } from '../../../reconcile/status.ts'
import type { NotificationKept } from '../../../store/deliveries.ts'

export type ChangeLine = {
  readonly parcel: string
  readonly now: Omit<ParcelStatus, 'items'>
  /** Null where there was no status before. */
  readonly before: StatusWord | null
  readonly at: Date
}

/** What the message says that was written when the status changed. */
export function presentChange({ parcelNumber, body, madeAt }: NotificationKept): ChangeLine {
  const { data } = JSON.parse(body) as {
    readonly data: {
      readonly before: StatusWord | null
      readonly status: Omit<ParcelStatus, 'items'>
    }
  }
  const { before, status } = data
  return { parcel: parcelNumber, now: status, before, at: madeAt }
}
