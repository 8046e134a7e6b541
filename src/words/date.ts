import type { PartialDate } from '../base/partial-date.ts'
import type { OurText } from '../records/whose.ts'
import type { Language } from './language.ts'

const MONTHS: { readonly [L in Language]: readonly string[] } = {
  en: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  es: ['ene', 'feb', 'mar', 'abr', 'may', 'jun', 'jul', 'ago', 'sep', 'oct', 'nov', 'dic'],
}

/** `Nov 30, 2026`, and of what is known to the month or year `Nov 2026`, `2026`; in Spanish `30 nov 2026`. Written out, because `6/7/74` reads two ways. */
export function printDate(date: PartialDate | string, language: Language = 'en'): OurText {
  const [year, month, day] = date.split('-').map(Number) as [number, number?, number?]
  if (month === undefined) return String(year) as OurText
  const name = MONTHS[language][month - 1]
  if (day === undefined) return `${name} ${year}` as OurText
  return (language === 'en' ? `${name} ${day}, ${year}` : `${day} ${name} ${year}`) as OurText
}

/** `2:43 p.m.`, by the clock on the wall; in Spanish `2:43 p. m.` (with the space that its spelling has). */
export function printTime(hour: number, minute: number, language: Language = 'en'): OurText {
  const half = hour < 12 ? 'a' : 'p'
  const clock = `${hour % 12 === 0 ? 12 : hour % 12}:${String(minute).padStart(2, '0')}`
  return (language === 'en' ? `${clock} ${half}.m.` : `${clock} ${half}.\u00A0m.`) as OurText
}
