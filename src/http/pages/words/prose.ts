import { isPlainDate } from '../../../base/plain-date.ts'
import { dayInWords } from './dates.ts'

/** A reason as a sentence of a page: begun with a capital, closed with a stop, its dates written out. */
export function prose(text: string): string {
  const begun = datesInWords(text.charAt(0).toUpperCase() + text.slice(1))
  return /[.!?]$/.test(begun) ? begun : `${begun}.`
}

export const datesInWords = (text: string): string =>
  text.replace(/\b\d{4}-\d{2}-\d{2}\b/g, (found) => (isPlainDate(found) ? dayInWords(found) : found))
