import { addDays, addMonths, addYears, type PlainDate } from '../../base/plain-date.ts'
import type { CalendarSpan, TransferWindow } from '../values/transfer-window.ts'

/** A span later, or earlier for `sign` −1, by the calendar: six months before 31 August is 28 or 29 February. */
export function shift(date: PlainDate, span: CalendarSpan, sign: 1 | -1): PlainDate {
  const count = sign * span.count
  if (span.unit === 'days') return addDays(date, count)
  return span.unit === 'months' ? addMonths(date, count) : addYears(date, count)
}

/** The days on which an inspection counts for a transfer on `transfer`; an open beginning is null. Ends included. */
export function countingDays(
  window: TransferWindow,
  transfer: PlainDate,
  facts: { readonly pumpedYearly: boolean; readonly weather: boolean },
): { readonly first: PlainDate | null; readonly last: PlainDate } {
  const before = facts.pumpedYearly ? (window.ifPumpedYearly ?? window.before) : window.before
  const after = facts.weather ? window.afterIfWeather : null
  return {
    first: before === null ? null : shift(transfer, before, -1),
    last: after === null ? transfer : shift(transfer, after, 1),
  }
}

/** The last day of transfer that an inspection still counts for; null where it never runs out. */
export function countsUntil(
  window: TransferWindow,
  inspected: PlainDate,
  pumpedYearly = false,
): PlainDate | null {
  const before = pumpedYearly ? (window.ifPumpedYearly ?? window.before) : window.before
  return before === null ? null : shift(inspected, before, 1)
}
