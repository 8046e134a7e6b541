import type { PlainDate } from '../base/plain-date.ts'
import type { OurText } from '../records/whose.ts'
import type { Language } from './language.ts'

const MONTHS: { readonly [L in Language]: readonly string[] } = {
  en: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  es: ['ene', 'feb', 'mar', 'abr', 'may', 'jun', 'jul', 'ago', 'sep', 'oct', 'nov', 'dic'],
}

/** `Nov 30, 2026`; in Spanish `30 nov 2026`. Written out, because `6/7/74` reads two ways. */
export function printDate(date: PlainDate | string, language: Language = 'en'): OurText {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number]
  const name = MONTHS[language][month - 1]
  return (language === 'en' ? `${name} ${day}, ${year}` : `${day} ${name} ${year}`) as OurText
}
