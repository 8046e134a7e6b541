import type { Step } from '../../../measure/step.ts'
import { type Html, html } from '../html.ts'

/** The working, so that it can be done again by hand: what, the formula, the same with numbers, the result. */
export const steps = (list: readonly Step[]): Html | null =>
  list.length === 0
    ? null
    : html`
      <h4>Working</h4>
      <ol class="steps">
        ${list.map(
          ({ says, formula, numbers, result }) =>
            html`
              <li>
                ${says}<br><code>${formula}</code><br>
                <code>${numbers}</code> = <code><b>${result}</b></code>
              </li>
            `,
        )}
      </ol>
    `
