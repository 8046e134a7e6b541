import { ACTOR_NOUNS } from '../../../words/acts.ts'
import { type Html, html } from '../html.ts'
import { differenceAnchor } from '../layout/addresses.ts'
import { severityTag } from '../parts/severity.ts'
import { dayAt } from '../words/dates.ts'
import type { DecisionShown, Difference } from './difference.ts'

const STANDING_WORDS: { readonly [S in Difference['standing']]: string } = {
  open: 'open',
  decided: 'decided',
  moved: 'decided earlier; the evidence has changed',
}

/** A difference under its line: what it means, who acts next, what was decided; `form` for who may decide. */
export const difference = (it: Difference, form: Html | null): Html =>
  html`
    <div
      class="difference ${it.severity} ${it.standing}" id="${differenceAnchor(it.id)}" role="group"
      aria-label="${it.title}, ${it.about}"
    >
      <p class="head">
        ${severityTag(it.severity)} <b>${it.title}</b> <span class="soft">
          ${STANDING_WORDS[it.standing]}, since ${dayAt(it.raisedAt)}
        </span>
      </p>
      <p>${it.says}</p>
      ${it.decision ? decided(it.decision) : next(it.next)}
      ${
        it.earlier.length > 0 &&
        html`
          <details class="earlier">
            <summary>Earlier decisions (${it.earlier.length})</summary>
            ${it.earlier.map(decided)}
          </details>
        `
      }
      ${form}
    </div>
  `

const next = ({ who, what }: Difference['next']): Html | null =>
  who === 'nobody' ? null : html`<p class="next"><b>Next:</b> ${ACTOR_NOUNS[who]} to ${what}.</p>`

export const decided = ({ done, reason, asks, set, by, at }: DecisionShown): Html =>
  html`
    <blockquote class="decision">
      <p>
        <b>${done}</b>
        ${set && html`: ${set}`}
        ${asks && html`: ${asks}`}
      </p>
      <p>${reason}</p>
      <footer>${by}, ${dayAt(at)}</footer>
    </blockquote>
  `
