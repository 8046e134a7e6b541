import type { Brand } from './brand.ts'
import { err, ok, type Result } from './result.ts'

/** A calendar day, `YYYY-MM-DD` (ISO 8601), proleptic Gregorian, years 1600 to 9999. Sorts as text. */
export type PlainDate = Brand<string, 'PlainDate'>

const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/
const DAY_MS = 86_400_000

const daysInMonth = (year: number, month: number): number => new Date(Date.UTC(year, month, 0)).getUTCDate()

/** Strict: `2023-02-29` is refused, with the reason. For dates as people write them see `reading/`. */
export function plainDate(text: string): Result<PlainDate, string> {
  const match = SHAPE.exec(text)
  if (!match) return err(`"${text}" is not a date: write YYYY-MM-DD, for example 1974-05-03`)
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])]
  if (year < 1600) return err(`"${text}" is before the year 1600`)
  if (month < 1 || month > 12) return err(`"${text}": there is no month ${match[2]}`)
  if (day < 1 || day > daysInMonth(year, month)) return err(`"${text}": that month has no day ${match[3]}`)
  return ok(text as PlainDate)
}

const toMs = (date: PlainDate): number => Date.parse(`${date}T00:00:00Z`)
const fromMs = (ms: number): PlainDate => new Date(ms).toISOString().slice(0, 10) as PlainDate

export const isPlainDate = (text: string): text is PlainDate => plainDate(text).ok

/** Negative when `a` is earlier than `b`, zero on the same day. */
export const compareDates = (a: PlainDate, b: PlainDate): number => (a < b ? -1 : a > b ? 1 : 0)

/** Whole days from `a` to `b`; negative when `b` is earlier. */
export const daysBetween = (a: PlainDate, b: PlainDate): number => Math.round((toMs(b) - toMs(a)) / DAY_MS)

export const addDays = (date: PlainDate, days: number): PlainDate => fromMs(toMs(date) + days * DAY_MS)

/** The same day `months` later; the last day of a shorter month (31 January + 1 month is 28 or 29 February). */
export function addMonths(date: PlainDate, months: number): PlainDate {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number]
  const index = year * 12 + (month - 1) + months
  const [y, m] = [Math.floor(index / 12), (index % 12) + 1]
  return fromMs(Date.UTC(y, m - 1, Math.min(day, daysInMonth(y, m))))
}

export const addYears = (date: PlainDate, years: number): PlainDate => addMonths(date, years * 12)

export const yearOf = (date: PlainDate): number => Number(date.slice(0, 4))

/** The day of an instant in Coordinated Universal Time. */
export const dayOf = (instant: Date): PlainDate => fromMs(instant.getTime())
