import type { PlainDate } from '../../base/plain-date.ts'

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

/** A day as a letter writes it: `June 1, 2026`. */
export function printDay(date: PlainDate): string {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number]
  return `${MONTHS[month - 1]} ${day}, ${year}`
}
