import { dayOf, type PlainDate } from '../../../base/plain-date.ts'
import { type Html, html } from '../html.ts'

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const

/** `Jun 20, 1974`. Written out, because `6/7/74` reads two ways. */
export function dayInWords(day: PlainDate | string): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number]
  return `${MONTHS[month - 1]} ${date}, ${year}`
}

export const day = (value: PlainDate | string): Html =>
  html`<time datetime="${value}">${dayInWords(value)}</time>`

/** The day of an instant. */
export const dayAt = (instant: Date): Html => day(dayOf(instant))
