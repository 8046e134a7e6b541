import { VOICES } from '../../../words/agent/status.ts'
import { inLanguage } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'
import { type Html, html } from '../html.ts'
import { letterCheckPath, letterPdfPath, lettersPath } from '../layout/addresses.ts'
import { day } from '../words/dates.ts'
import { LETTER_NAMES, LETTERS } from './copy.ts'
import type { LetterLine, LettersShown } from './present.ts'

/** The letters there are, and those that can be had. */
export function lettersPart(
  county: string,
  parcel: string,
  { lines, offers, newest }: LettersShown,
  language: Language = 'en',
): Html {
  const copy = inLanguage(LETTERS, language)
  return html`
    ${lines.length > 0 && html`<ul class="papers">${lines.map((it) => line(it, language))}</ul>`}
    <form method="post" action="${lettersPath(county, parcel)}">
      <input type="hidden" name="newest" value="${newest}">
      <input type="hidden" name="language" value="${language}">
      <p class="offers">
        ${offers.map(
          (kind) => html`
            <button name="kind" value="${kind}">${copy.get(LETTER_NAMES[kind][language])}</button> `,
        )}
        <span class="soft">${copy.help}</span>
      </p>
    </form>
  `
}

function line({ id, kind, number, issuedOn, word, code, withdrawn }: LetterLine, language: Language): Html {
  const copy = inLanguage(LETTERS, language)
  return html`
    <li>
      <a href="${letterPdfPath(id)}">${LETTER_NAMES[kind][language]} ${number}</a>, ${day(issuedOn, language)}:${' '}
      ${VOICES[language].word[word]}.${' '}
      <a href="${letterCheckPath(code)}" aria-label="${copy.checkOf(number)}">${copy.check}</a>
      ${withdrawn !== null && html` <b>${copy.withdrawn}</b> ${withdrawn}`}
    </li>
  `
}
