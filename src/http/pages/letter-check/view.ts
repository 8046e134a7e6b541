import { LETTER_TITLES } from '../../../letters/content/frame.ts'
import type { LetterChecked, LetterState } from '../../../operations/letters/check-letter.ts'
import { SINCE_WORDS } from '../../../words/agent/since.ts'
import { VOICES } from '../../../words/agent/status.ts'
import { flag, type Html, html } from '../html.ts'
import { day, dayAt } from '../words/dates.ts'

export type CodeForm = { readonly typed: string; readonly fault: string | null }

/** Where a code is typed. */
export const codeForm = ({ typed, fault }: CodeForm): Html =>
  html`<form class="sign-in" method="get" action="/letters">${
    fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`
  }<p><label for="code">Code of the letter</label><input id="code" name="code" value="${typed}" autocomplete="off" autocapitalize="characters" spellcheck="false" maxlength="60" required${
    fault && html` aria-invalid="true" aria-describedby="fault"`
  } ${flag('autofocus', fault !== null)}></p><p class="soft">Four groups of four, beside the square of dots on the letter. Hyphens, spaces and small letters do not matter.</p><p><button>Check</button></p></form>`

export const askView = (form: CodeForm): Html =>
  html`<h1>Check a letter</h1><p class="lead">Whether it is genuine, and whether it still says what the county’s file says.</p>${codeForm(form)}`

const HEAD: { readonly [S in LetterState]: string } = {
  valid: 'Genuine, and it stands',
  superseded: 'Genuine, but superseded',
  withdrawn: 'Withdrawn',
}

const LEAD: { readonly [S in LetterState]: string } = {
  valid: 'This letter says what the county’s file says today.',
  superseded:
    'This letter was right on the day it speaks of. Something has come in since: ask for a new one before you rely on it.',
  withdrawn: 'The county has taken this letter back. Do not rely on it.',
}

/** Which of the status panel's looks goes with it; the words say the same. */
const LOOK: { readonly [S in LetterState]: string } = {
  valid: 'agrees',
  superseded: 'out-of-date',
  withdrawn: 'action-needed',
}

export const checkedView = (checked: LetterChecked): Html => {
  const { state, since, newer, withdrawn, checkedAt } = checked
  return html`<h1>Letter ${checked.statement.number}</h1><section class="status ${LOOK[state]}" aria-label="Result of the check"><p class="word">${HEAD[state]}</p><p class="lead">${LEAD[state]}</p>${
    withdrawn && html`<p>Withdrawn on ${day(withdrawn.on)}. <b>Reason:</b> ${withdrawn.reason}</p>`
  }${
    since.length > 0 &&
    html`<h2>What has come in since</h2><ul>${since.map((it) => html`<li>${SINCE_WORDS.en[it]}</li>`)}</ul>`
  }${newer && html`<p>Letter ${newer.number} of ${day(newer.issuedOn)} stands in its place.</p>`}<p class="soft">Checked on ${dayAt(checkedAt)}.</p></section>${letterView(checked)}${proofView(checked)}<h2>Check another letter</h2>${codeForm({ typed: '', fault: null })}`
}

const letterView = ({ statement }: LetterChecked): Html => {
  const { kind, county, parcel, issuedOn, asOf, status, number } = statement
  return html`<section><h2>What the letter is</h2><p class="soft">Compare this with the paper in your hand.</p><dl><div><dt>Letter</dt><dd>${LETTER_TITLES[kind]} ${number}</dd></div><div><dt>County</dt><dd>${county.name}</dd></div><div><dt>Parcel</dt><dd>${parcel.number}${parcel.address && html`, ${parcel.address}`}</dd></div><div><dt>Issued</dt><dd>${day(issuedOn)}</dd></div><div><dt>As of</dt><dd>${day(asOf)}</dd></div><div><dt>Status then</dt><dd>${VOICES.en.word[status]}</dd></div></dl></section>`
}

/** For whoever wants to check it by themselves: what was signed, and the signature. */
const proofView = ({ statement, signature }: LetterChecked): Html =>
  html`<details><summary>The signature, to check without this service</summary><p>The keys are at <a href="/.well-known/jwks.json">/.well-known/jwks.json</a>. The PDF that was signed has the SHA-256 hash <code>${statement.pdfSha256}</code>.</p><pre>${JSON.stringify(statement, null, 2)}</pre><p>Signature (JWS, Ed25519):</p><pre>${signature}</pre></details>`
