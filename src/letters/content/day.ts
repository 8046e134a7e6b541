import type { PartialDate } from '../../base/partial-date.ts'
import { printDate } from '../../words/date.ts'

/** A day as a letter writes it. */
export const printDay = (date: PartialDate): string => printDate(date)
