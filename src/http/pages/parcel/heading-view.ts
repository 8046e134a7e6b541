import type { Alias, Parcel } from '../../../store/parcels.ts'
import { inLanguage } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'
import { type Html, html } from '../html.ts'
import { dayInWords } from '../words/dates.ts'
import { CHANGES_OF_NUMBER, HEADING } from './copy.ts'

/** Number, address, old numbers; and, after a search that was not exact, how it led here. */
export function heading(
  { number, address, retiredOn }: Parcel,
  oldNumbers: readonly Alias[],
  came: string | null,
  language: Language = 'en',
): Html {
  const copy = inLanguage(HEADING, language)
  return html`
    ${came && html`<p class="notice" role="status">${came}</p>`}
    <h1><span class="number">${number}</span> ${address ?? copy.noAddress}</h1>
    ${retiredOn && html`<p>${copy.retired(dayInWords(retiredOn, language))}</p>`}
    ${
      oldNumbers.length > 0 &&
      html`
        <p class="soft">
          ${copy.before} ${oldNumbers.map((it) => oldNumber(it, language)).join('; ')}.
        </p>
      `
    }
  `
}

function oldNumber({ number, kind, changedOn }: Alias, language: Language): string {
  const what = CHANGES_OF_NUMBER[kind][language]
  return `${number} (${changedOn ? `${what}, ${dayInWords(changedOn, language)}` : what})`
}
