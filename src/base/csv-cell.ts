/** A text that a spreadsheet would take for a formula or a command: by its first sign, full-width ones too. */
const FORMULA = /^[\s\u00a0\ufeff]*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/
/** A figure with a sign in front is only a figure, whoever opens it. */
const FIGURE = /^[+-]?\d+(\.\d+)?$/
const NEEDS_QUOTES = /[",\r\n]/

/**
 * One field of a CSV line (RFC 4180). Text that a spreadsheet would run, because it begins with `=`, `+`, `-` or `@`
 * (blanks before them do not help), gets an apostrophe before it, which spreadsheets take for "this is text" (OWASP,
 * CSV Injection; from memory). Null is an empty field; a number is never changed.
 */
export function csvCell(value: string | number | boolean | null): string {
  if (value === null) return ''
  if (typeof value !== 'string') return String(value)
  const safe = FORMULA.test(value) && !FIGURE.test(value) ? `'${value}` : value
  return NEEDS_QUOTES.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
