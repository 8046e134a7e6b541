import type { PlainDate } from '../../base/plain-date.ts'
import { printDate } from '../../words/date.ts'

/** A day as a letter writes it. */
export const printDay = (date: PlainDate): string => printDate(date)
