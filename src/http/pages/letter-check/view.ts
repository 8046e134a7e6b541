import type { LetterChecked, LetterState } from '../../../operations/letters/check-letter.ts'
import { SINCE_WORDS } from '../../../words/agent/since.ts'
import { VOICES } from '../../../words/agent/status.ts'
import { type CopyIn, inLanguage } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'
import { flag, type Html, html } from '../html.ts'
import { LETTER_NAMES } from '../letter/copy.ts'
import { day, dayAt } from '../words/dates.ts'
import { CHECKED, CODE_FORM, STATES } from './copy.ts'

type Checked = CopyIn<typeof CHECKED>
export type CodeForm = { readonly typed: string; readonly fault: string | null }

/** Where a code is typed. */
export function codeForm({ typed, fault }: CodeForm, language: Language): Html {
  const copy = inLanguage(CODE_FORM, language)
  return html`
    <form class="sign-in" method="get" action="/letters">
      ${fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`}
      <p>
        <label for="code">${copy.label}</label>
        <input
          id="code" name="code" value="${typed}" autocomplete="off" autocapitalize="characters"
          spellcheck="false" maxlength="60"
          required${fault && html` aria-invalid="true" aria-describedby="fault"`}
          ${flag('autofocus', fault !== null)}
        >
      </p>
      <p class="soft">${copy.help}</p>
      <p><button>${copy.submit}</button></p>
    </form>
  `
}

export const askView = (form: CodeForm, language: Language): Html =>
  html`
    <h1>${CODE_FORM.title[language]}</h1>
    <p class="lead">${CODE_FORM.lead[language]}</p>
    ${codeForm(form, language)}
  `

/** Which of the status panel's looks goes with it; the words say the same. */
const LOOK: { readonly [S in LetterState]: string } = {
  valid: 'agrees',
  superseded: 'out-of-date',
  withdrawn: 'action-needed',
}

export const checkedView = (checked: LetterChecked, language: Language): Html => {
  const { state, since, newer, withdrawn, checkedAt } = checked
  const copy = inLanguage(CHECKED, language)
  return html`
    <h1>${copy.title(checked.statement.number)}</h1>
    <section class="status ${LOOK[state]}" aria-label="${copy.result}">
      <p class="word">${STATES[state].head[language]}</p>
      <p class="lead">${STATES[state].lead[language]}</p>
      ${withdrawn && html`<p>${copy.withdrawn(day(withdrawn.on, language))}${withdrawn.reason}</p>`}
      ${
        since.length > 0 &&
        html`
          <h2>${copy.since}</h2>
          <ul>${since.map((part) => html`<li>${SINCE_WORDS[language][part]}</li>`)}</ul>
        `
      }
      ${newer && html`<p>${copy.newer(newer.number, day(newer.issuedOn, language))}</p>`}
      <p class="soft">${copy.checked} ${dayAt(checkedAt, language)}.</p>
    </section>
    ${letterView(checked, copy, language)}${proofView(checked, copy)}
    <h2>${copy.another}</h2>
    ${codeForm({ typed: '', fault: null }, language)}
  `
}

function letterView({ statement }: LetterChecked, copy: Checked, language: Language): Html {
  const { kind, county, parcel, issuedOn, asOf, status, number } = statement
  const lines: readonly (readonly [string, Html | string])[] = [
    [copy.letter, `${LETTER_NAMES[kind][language]} ${number}`],
    [copy.county, county.name],
    [copy.parcel, [parcel.number, parcel.address].filter(Boolean).join(', ')],
    [copy.issued, day(issuedOn, language)],
    [copy.asOf, day(asOf, language)],
    [copy.status, VOICES[language].word[status]],
  ]
  return html`
    <section>
      <h2>${copy.about}</h2>
      <p class="soft">${copy.compare}</p>
      <dl>
        ${lines.map(([what, value]) => html`<div><dt>${what}</dt><dd>${value}</dd></div>`)}
      </dl>
    </section>
  `
}

/** For whoever wants to check it without the service: what was signed, and the signature. */
const proofView = ({ statement, signature }: LetterChecked, copy: Checked): Html =>
  html`
    <details>
      <summary>${copy.signature}</summary>
      <p>
        ${copy.keys(
          html`<a href="/.well-known/jwks.json">/.well-known/jwks.json</a>`,
          html`<code>${statement.pdfSha256}</code>`,
        )}
      </p>
      <pre>${JSON.stringify(statement, null, 2)}</pre>
      <p>${copy.jws}</p>
      <pre>${signature}</pre>
    </details>
  `
