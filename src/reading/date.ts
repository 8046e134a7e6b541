import { type PartialDate, partialDate } from '../base/partial-date.ts'
import { type PlainDate, plainDate } from '../base/plain-date.ts'
import { err, ok, type Result } from '../base/result.ts'

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
const ISO = /^(\d{4})\s?[/.-]\s?(\d{1,2})\s?[/.-]\s?(\d{1,2})$/
const US = /^(\d{1,2})\s*[/.-]\s*(\d{1,2})\s*[/.-]\s*(\d{4}|'?\d{2})$/
const MONTH_FIRST = /^([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?(?:\s*,\s*|\s+)(\d{4}|'?\d{2})$/i
const DAY_FIRST = /^(\d{1,2})(?:st|nd|rd|th)?[\s-]+([a-z]{3,9})\.?[\s,-]+(\d{4}|'?\d{2})$/i

/** Two figures of a year on a permit: 30 to 99 are 19__, 00 to 29 are 20__ (no septic permit is older than 1930). */
export const PIVOT = 30

const YEAR_MONTH = /^(\d{4})\s?[/.-]\s?(\d{1,2})$/
const MONTH_YEAR = /^(\d{1,2})\s?[/.-]\s?(\d{4}|'?\d{2})$/
const NAMED_MONTH = /^([a-z]{3,9})\.?[\s,-]*(\d{4}|'?\d{2})$/i
const YEAR = /^(\d{4}|'\d{2})$/

const WANTED = 'write YYYY-MM-DD, 5/3/1974 (month first) or May 3, 1974'

/** A date as people write it on permits in the United States: month first where all is figures. */
export function parseDate(written: string): Result<PlainDate, string> {
  const text = written.trim()
  if (text.length > 40) return err(`too long for a date: ${WANTED}`)
  const iso = ISO.exec(text)
  if (iso) return made(iso[1]!, iso[2]!, iso[3]!, text)
  const us = US.exec(text)
  if (us) return made(us[3]!, us[1]!, us[2]!, text)
  const monthFirst = MONTH_FIRST.exec(text)
  if (monthFirst) return named(monthFirst[3]!, monthFirst[1]!, monthFirst[2]!, text)
  const dayFirst = DAY_FIRST.exec(text)
  if (dayFirst) return named(dayFirst[3]!, dayFirst[2]!, dayFirst[1]!, text)
  return err(`"${text}" is not a date: ${WANTED}`)
}

const PARTLY = `${WANTED}; or as far as it is known: Sept. 1977, 9/77 or 1977`

/** A date as old cards have it: to the day, or to the month (`Sept. '77`, `9/77`) or the year (`1977`) alone. */
export function parsePartialDate(written: string): Result<PartialDate, string> {
  const text = written.trim()
  if (text.length > 40) return err(`too long for a date: ${PARTLY}`)
  const part = (year: string, month?: string): Result<PartialDate, string> => {
    const date = partialDate(`${fullYear(year)}${month === undefined ? '' : `-${month.padStart(2, '0')}`}`)
    return date.ok ? date : err(`"${text}": ${date.error.replace(/^"[^"]*":? ?/, '')}`)
  }
  const year = YEAR.exec(text)
  if (year) return part(year[1]!)
  const isoMonth = YEAR_MONTH.exec(text)
  if (isoMonth) return part(isoMonth[1]!, isoMonth[2]!)
  const month = MONTH_YEAR.exec(text)
  if (month) return part(month[2]!, month[1]!)
  const byName = NAMED_MONTH.exec(text)
  const at = byName ? MONTHS.indexOf(byName[1]!.slice(0, 3).toLowerCase()) : -1
  if (byName && at >= 0) return part(byName[2]!, String(at + 1))
  const whole = parseDate(text)
  return whole.ok ? whole : err(whole.error.replace(WANTED, PARTLY))
}

const fullYear = (year: string): string => {
  const figures = year.replace("'", '')
  return figures.length === 4 ? figures : `${Number(figures) >= PIVOT ? '19' : '20'}${figures}`
}

function named(year: string, month: string, day: string, text: string): Result<PlainDate, string> {
  const at = MONTHS.indexOf(month.slice(0, 3).toLowerCase())
  if (at < 0) return err(`"${text}": "${month}" is not a month`)
  return made(year, String(at + 1), day, text)
}

function made(year: string, month: string, day: string, text: string): Result<PlainDate, string> {
  const full = fullYear(year)
  const date = plainDate(`${full}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`)
  if (date.ok) return ok(date.value)
  if (Number(month) > 12 && Number(day) <= 12) {
    return err(
      `"${text}" has no month ${month}: dates are read month first, so write ${day}/${month}/${full}`,
    )
  }
  return err(`"${text}": ${date.error.replace(/^"[^"]*":? ?/, '')}`)
}
