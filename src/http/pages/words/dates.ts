import { dayOf, type PlainDate } from '../../../base/plain-date.ts'
import { printDate as printed } from '../../../words/date.ts'
import type { Language } from '../../../words/language.ts'
import { type Html, html } from '../html.ts'

/** A day on a page; English unless the page says otherwise. */
export const dayInWords = (value: PlainDate | string, language: Language = 'en'): string =>
  printed(value, language)

export const day = (value: PlainDate | string, language: Language = 'en'): Html =>
  html`<time datetime="${value}">${printed(value, language)}</time>`

/** The day of an instant. */
export const dayAt = (instant: Date, language: Language = 'en'): Html => day(dayOf(instant), language)
