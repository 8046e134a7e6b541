import type { ParcelStatus } from '../../../reconcile/status.ts'
import { type Html, html } from '../html.ts'
import { day } from '../words/dates.ts'
import { prose } from '../words/prose.ts'
import { STATUS_HEAD } from '../words/status.ts'
import { WHO } from '../words/who.ts'

/** The word, the sentence, what is outstanding and who has to act, as of when. */
export const statusPanel = ({
  word,
  sentence,
  outstanding,
  asOf,
}: ParcelStatus & { readonly asOf: string }): Html =>
  html`<section class="status ${word}" aria-label="Status"><p class="word">${STATUS_HEAD[word]}</p><p class="lead">${sentence}</p>${
    outstanding.length > 0 &&
    html`<h2>What is outstanding</h2><ol class="outstanding">${outstanding.map(
      ({ says, who, what }) =>
        html`<li><p>${prose(says)}</p>${who !== 'nobody' && html`<p class="next"><b>Who has to act:</b> ${WHO[who]}, to ${what}.</p>`}</li>`,
    )}</ol>`
  }<p class="soft">As of ${day(asOf)}.</p></section>`
