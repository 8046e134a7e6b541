import { STATE_TOLD } from '../../../words/agent/standing.ts'
import type { StatusTold } from '../../../words/agent/status.ts'
import type { Language } from '../../../words/language.ts'
import { type Html, html } from '../html.ts'
import { day } from '../words/dates.ts'

/** What the panel says around the status, in each language. */
const COPY: {
  readonly [L in Language]: {
    readonly status: string
    readonly open: string
    readonly waived: string
    readonly asOf: string
    readonly by: string
    readonly systems: string
  }
} = {
  en: {
    status: 'Status',
    open: 'What is open',
    waived: 'What was not inspected',
    asOf: 'As of',
    by: 'By',
    systems: 'Septic systems of this parcel',
  },
  es: {
    status: 'Estado',
    open: 'Qué está pendiente',
    waived: 'Qué no se inspeccionó',
    asOf: 'Al día',
    by: 'Antes del',
    systems: 'Sistemas sépticos de esta parcela',
  },
}

/** A status in words and the day it speaks of, as the API tells it too. */
export type StatusShown = StatusTold & { readonly asOf: string }

/** How each system stands, where the parcel has several or shares one. */
export const systemsPart = (systems: StatusTold['systems'], language: Language): Html | false =>
  systems.length > 0 &&
  html`
    <h2>${COPY[language].systems}</h2>
    <ul class="outstanding">
      ${systems.map(
        ({ name, title, sentence, notes }) =>
          html`
            <li>
              <p><b>${sentenceCase(name)}: ${title}.</b> ${sentence}</p>
              ${notes.length > 0 && html`<p class="next">${notes.join(' ')}</p>`}
            </li>
          `,
      )}
    </ul>
  `

const sentenceCase = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1)

/** The word, the sentence, what is open and whose turn it is, as of when. */
export function statusPanel(status: StatusShown, language: Language = 'en'): Html {
  const { word, title, sentence, items, waived, systems } = status
  const copy = COPY[language]
  return html`
    <section class="status ${word}" aria-label="${copy.status}">
      <p class="word">${title}</p>
      <p class="lead">${sentence}</p>
      ${systemsPart(systems, language)}
      ${
        items.length > 0 &&
        html`
          <h2>${copy.open}</h2>
          <ol class="outstanding">
            ${items.map(
              ({ about, says, state, required, due }) =>
                html`
                  <li>
                    <p><b>${about}.</b> ${says}</p>
                    <p class="next">
                      <b>${STATE_TOLD[language][state]}.</b> ${required}
                      ${due !== null && html` ${copy.by} ${day(due, language)}.`}
                    </p>
                  </li>
                `,
            )}
          </ol>
        `
      }
      ${
        waived.length > 0 &&
        html`
          <h2>${copy.waived}</h2>
          <ul class="outstanding">
            ${waived.map(
              ({ about, says, why }) =>
                html`
                  <li>
                    <p><b>${about}.</b> ${says}</p>
                    <p class="next">${why}</p>
                  </li>
                `,
            )}
          </ul>
        `
      }
      <p class="soft">${copy.asOf} ${day(status.asOf, language)}.</p>
    </section>
  `
}
