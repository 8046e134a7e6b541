import { type Html, html } from '../../pages/html.ts'
import { severityTag } from '../../pages/parts/severity.ts'
import { capital } from '../../pages/words/plain.ts'
import { datesInWords, prose } from '../../pages/words/prose.ts'
import type { Difference, Live } from '../live/live.ts'

/** What the numbers come to, in the order of use: the size, what to do before the lid goes back, what differs. */
export function liveView(
  { holds, differences, agrees, again, next }: Live,
  recordedCapacity: string | null,
  lead = 'While it is open',
): Html {
  const nothing = !holds && differences.length === 0 && agrees.length === 0 && !again && !next
  if (nothing) return html`<p class="soft">Nothing to compare yet.</p>`
  return html`
    ${
      holds &&
      html`
        <p class="holds">
          <span class="fnd"><span class="soft">holds, to the outlet</span> <b>${holds}</b></span>
          ${
            recordedCapacity &&
            html`
              <span class="rec"><span class="soft">on record</span> ${recordedCapacity}</span>
            `
          }
        </p>
      `
    }
    ${
      again &&
      html`
        <div class="ask-for">
          <p><b>Too rough to tell.</b> ${capital(again.what)}.</p>
          <p class="soft">${capital(again.why)}.</p>
        </div>
      `
    }
    ${
      !again &&
      next &&
      html`
        <div class="ask-for">
          <p><b>${lead}:</b> ${next.what}.</p>
          <p class="soft">${capital(next.how)}. ${next.settles.join(' ')}</p>
        </div>
      `
    }
    ${differencesView(differences)}
    ${
      agrees.length > 0 &&
      html`<ul class="agreeing">${agrees.map((says) => html`<li>${prose(says)}</li>`)}</ul>`
    }
  `
}

export const differencesView = (list: readonly Difference[]): Html | null =>
  list.length === 0
    ? null
    : html`
      <ul class="differs">
        ${list.map(({ severity, says }) => html`<li>${severityTag(severity)} ${datesInWords(says)}</li>`)}
      </ul>
    `
