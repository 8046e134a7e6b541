import type { Severity } from '../../../reconcile/kinds.ts'
import { type Html, html } from '../html.ts'

/** Filled for what must be done, open for what must be looked at, a dot for what is only noted: a shape and a word. */
const SHAPES: { readonly [S in Severity]: { readonly sign: string; readonly word: string } } = {
  action: { sign: '▲', word: 'Action' },
  review: { sign: '△', word: 'Review' },
  note: { sign: '·', word: 'Note' },
}

export const severityTag = (severity: Severity): Html =>
  html`
    <span class="tag ${severity}">
      <span aria-hidden="true">${SHAPES[severity].sign}</span> ${SHAPES[severity].word}
    </span>
  `
