import { parseDate, parsePartialDate } from '../date.ts'
import { type Found, matches } from './found.ts'

const MONTH =
  'jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?'
const YEAR = String.raw`(?:19|20)\d\d|'\d\d|\d\d`
const ISO = /(?<!\d)(?:19|20)\d\d-\d{1,2}-\d{1,2}(?!\d)/
const FIGURES = new RegExp(
  String.raw`(?<![\d/.-])(\d{1,2})\s?[/.-]\s?(\d{1,2})\s?[/.-]\s?(${YEAR})(?![\d/-])`,
)
const MONTH_FIRST = new RegExp(
  String.raw`\b(${MONTH})\.?\s*(\d{1,2})(?:st|nd|rd|th)?\s*[,.]?\s*(${YEAR})(?!\d)`,
  'i',
)
const DAY_FIRST = new RegExp(
  String.raw`(?<!\d)(\d{1,2})(?:st|nd|rd|th)?(?:\s+day\s+of)?[\s-]*(${MONTH})\.?[\s,-]*(${YEAR})(?!\d)`,
  'i',
)

const MONTH_OF_YEAR = new RegExp(String.raw`\b(${MONTH})\.?\s*,?\s*((?:19|20)\d\d|'\d\d)(?!\d)`, 'i')
const MONTH_AND_YEAR = /(?<![\d/.-])(\d{1,2})\s?\/\s?((?:19|20)\d\d|'\d\d|[3-9]\d)(?![\d/-])/
const YEAR_ALONE = /^\s*(?:19|20)\d\d\s*$/

/** Dates in a text, in order, as the permit entry takes them: in figures month first, or with the month named. */
export function findDates(text: string): Found<string>[] {
  const found: Found<string>[] = []
  const add = (candidates: readonly Found<string>[]): void => {
    for (const candidate of candidates) {
      if (!found.some(({ start, end }) => candidate.start < end && candidate.end > start))
        found.push(candidate)
    }
  }
  add(matches(text, ISO, ([written]) => made(written, 1)))
  add(
    matches(text, MONTH_FIRST, ([, month, day, year]) => made(`${cased(month!)} ${Number(day)}, ${year}`, 1)),
  )
  add(
    matches(text, DAY_FIRST, ([, day, month, year]) =>
      made(`${cased(month!)} ${Number(day)}, ${year}`, 0.98),
    ),
  )
  add(matches(text, FIGURES, ([, month, day, year]) => made(`${month}/${day}/${year}`, 0.98)))
  if (found.length === 0) add(partial(text))
  return found.sort((a, b) => a.start - b.start)
}

/** Where no day is written: the month and year, or a year that stands alone. */
function partial(text: string): Found<string>[] {
  const named = matches(text, MONTH_OF_YEAR, ([, month, year]) => known(`${cased(month!)} ${year}`, 0.95))
  const figures = matches(text, MONTH_AND_YEAR, ([, month, year]) => known(`${month}/${year}`, 0.85))
  const year = matches(text, YEAR_ALONE, ([written]) => known(written.trim(), 0.9))
  return [named, figures, year].find((it) => it.length > 0) ?? []
}

const known = (value: string, fit: number) =>
  parsePartialDate(value).ok ? { value, fit, doubts: [] } : undefined

const made = (value: string, fit: number) => (parseDate(value).ok ? { value, fit, doubts: [] } : undefined)

/** `MAY` and `may` are written `May`; a short form keeps its three letters, as the date parser takes them. */
const cased = (month: string): string => month.charAt(0).toUpperCase() + month.slice(1).toLowerCase()
