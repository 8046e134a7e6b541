import type { PlainDate } from '../base/plain-date.ts'

/** Days from `from` (included) until `until` (excluded); null ends are open. */
export type Span = { readonly from: PlainDate | null; readonly until: PlainDate | null }

export const ALWAYS: Span = { from: null, until: null }

export const holdsOn = (span: Span, date: PlainDate): boolean =>
  (span.from === null || date >= span.from) && (span.until === null || date < span.until)

const later = (a: PlainDate | null, b: PlainDate | null) => (a === null ? b : b === null || a >= b ? a : b)
const sooner = (a: PlainDate | null, b: PlainDate | null) => (a === null ? b : b === null || a <= b ? a : b)

/** The days that both hold; null when there are none. */
export function overlap(a: Span, b: Span): Span | null {
  const both = { from: later(a.from, b.from), until: sooner(a.until, b.until) }
  return both.from !== null && both.until !== null && both.from >= both.until ? null : both
}
