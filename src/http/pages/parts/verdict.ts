import type { Verdict } from '../../../reconcile/outcome.ts'
import { VERDICT_WORDS } from '../../../words/titles.ts'
import { type Html, html } from '../html.ts'

/** The sign between record and found, with its word under it; a line that no check asks about has a plain dot. */
export const verdictSign = (verdict: Verdict | null): Html =>
  verdict === null
    ? html`<span class="verdict none" aria-hidden="true"><b>·</b></span>`
    : html`
      <span class="verdict ${verdict}">
        <b aria-hidden="true">${VERDICT_WORDS[verdict].sign}</b> <span>
          ${VERDICT_WORDS[verdict].word}
        </span>
      </span>
    `
