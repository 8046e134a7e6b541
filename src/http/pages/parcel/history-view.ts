import { type Html, html } from '../html.ts'
import { reconciliationPath } from '../layout/addresses.ts'
import { day } from '../words/dates.ts'
import { HAPPENED_WORDS, type Happened } from './history.ts'

/** The line of events, oldest first. */
export const history = (county: string, events: readonly Happened[]): Html =>
  events.length === 0
    ? html`<p>Nothing yet.</p>`
    : html`<ol class="history">${events.map((it) => event(county, it))}</ol>`

const event = (county: string, { on, kind, says, more, reconciliation }: Happened): Html =>
  html`
    <li class="${kind}">
      <p><span class="when">${day(on)}</span> <span class="soft">${HAPPENED_WORDS[kind]}</span></p>
      <p>
        ${says}
        ${
          reconciliation &&
          html` <a href="${reconciliationPath(county, reconciliation)}">see it as it was</a>`
        }
      </p>
      ${more.length > 0 && html`<ul>${more.map((line) => html`<li>${line}</li>`)}</ul>`}
    </li>
  `
