import { type Html, html } from '../html.ts'
import { letterCheckPath, letterPdfPath, lettersPath } from '../layout/addresses.ts'
import { day } from '../words/dates.ts'
import type { LetterLine, LettersShown } from './present.ts'

/** The letters there are, and those that can be had. */
export const lettersPart = (county: string, parcel: string, { lines, offers, newest }: LettersShown): Html =>
  html`${lines.length > 0 && html`<ul class="papers">${lines.map(line)}</ul>`}<form method="post" action="${lettersPath(county, parcel)}"><input type="hidden" name="newest" value="${newest}"><p class="offers">${offers.map(
    ({ kind, title }) => html`<button name="kind" value="${kind}">Get a ${title.toLowerCase()}</button> `,
  )}<span class="soft">A PDF, dated, numbered and signed. Whoever holds it can check it.</span></p></form>`

const line = ({ id, title, number, issuedOn, word, code, withdrawn }: LetterLine): Html =>
  html`<li><a href="${letterPdfPath(id)}">${title} ${number}</a>, ${day(issuedOn)}: ${word}. <a href="${letterCheckPath(code)}" aria-label="Check letter ${number}">Check</a>${
    withdrawn !== null && html` <b>Withdrawn:</b> ${withdrawn}`
  }</li>`
