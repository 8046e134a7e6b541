import type { Brand } from './brand.ts'
import { addDays, addMonths, addYears, compareDates, type PlainDate, plainDate } from './plain-date.ts'
import { err, ok, type Result } from './result.ts'

/**
 * A day as far as it is known: `1977-09-05`, `1977-09` or `1977` (ISO 8601, reduced precision). It stands for every day
 * from its first to its last, and a comparison that they do not all answer alike is not answered.
 */
export type PartialDate = PlainDate | Brand<string, 'MonthOrYear'>

/** Days from `first` to `last`, both included. */
export type Days = { readonly first: PlainDate; readonly last: PlainDate }

const MONTH = /^\d{4}-\d{2}$/
const YEAR = /^\d{4}$/

/** Strict, as `plainDate` is: a month that there is not, or a year before 1600, is refused with the reason. */
export function partialDate(text: string): Result<PartialDate, string> {
  if (!YEAR.test(text) && !MONTH.test(text)) return plainDate(text)
  const first = plainDate(`${text}${YEAR.test(text) ? '-01' : ''}-01`)
  return first.ok ? ok(text as PartialDate) : err(first.error.replace(/^"[^"]*"/, `"${text}"`))
}

export const isWholeDay = (date: PartialDate): date is PlainDate => date.length === 10

export const firstDay = (date: PartialDate): PlainDate =>
  isWholeDay(date) ? date : (`${date}${YEAR.test(date) ? '-01' : ''}-01` as PlainDate)

export function lastDay(date: PartialDate): PlainDate {
  if (isWholeDay(date)) return date
  const next = YEAR.test(date) ? addYears(firstDay(date), 1) : addMonths(firstDay(date), 1)
  return addDays(next, -1)
}

export const daysOf = (date: PartialDate): Days => ({ first: firstDay(date), last: lastDay(date) })

export const yearIn = (date: PartialDate): number => Number(date.slice(0, 4))

/** Whether it was on or before a day; null where the missing part decides. */
export function isBy(date: PartialDate, day: PlainDate): boolean | null {
  if (lastDay(date) <= day) return true
  return firstDay(date) > day ? false : null
}

/** The later of two: where it can't be told which that is, the days that it may be. */
export const laterOf = (a: Days, b: Days): Days => ({
  first: laterDay(a.first, b.first),
  last: laterDay(a.last, b.last),
})

const laterDay = (a: PlainDate, b: PlainDate): PlainDate => (compareDates(a, b) >= 0 ? a : b)
