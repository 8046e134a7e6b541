import { type PlainDate, plainDate } from '../base/plain-date.ts'
import { err, ok, type Result } from '../base/result.ts'

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
const ISO = /^(\d{4})-(\d{1,2})-(\d{1,2})$/
const US = /^(\d{1,2})\s*[/.-]\s*(\d{1,2})\s*[/.-]\s*(\d{4}|'?\d{2})$/
const MONTH_FIRST = /^([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?\s*,?\s+(\d{4}|'?\d{2})$/i
const DAY_FIRST = /^(\d{1,2})(?:st|nd|rd|th)?[\s-]+([a-z]{3,9})\.?[\s,-]+(\d{4}|'?\d{2})$/i

/** Two figures of a year on a permit: 30 to 99 are 19__, 00 to 29 are 20__ (no septic permit is older than 1930). */
export const PIVOT = 30

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

function named(year: string, month: string, day: string, text: string): Result<PlainDate, string> {
  const at = MONTHS.indexOf(month.slice(0, 3).toLowerCase())
  if (at < 0) return err(`"${text}": "${month}" is not a month`)
  return made(year, String(at + 1), day, text)
}

function made(year: string, month: string, day: string, text: string): Result<PlainDate, string> {
  const figures = year.replace("'", '')
  const full = figures.length === 4 ? figures : `${Number(figures) >= PIVOT ? '19' : '20'}${figures}`
  const date = plainDate(`${full}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`)
  if (date.ok) return ok(date.value)
  if (Number(month) > 12 && Number(day) <= 12) {
    return err(
      `"${text}" has no month ${month}: dates are read month first, so write ${day}/${month}/${full}`,
    )
  }
  return err(`"${text}": ${date.error.replace(/^"[^"]*":? ?/, '')}`)
}
