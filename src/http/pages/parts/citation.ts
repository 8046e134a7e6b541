import type { Citation } from '../../../rules/citation.ts'
import { type Html, html, markup } from '../html.ts'
import { VERIFIED_WORDS } from '../words/sources.ts'

/** A citation and how it was verified: a rule whose source nobody has read yet says so wherever it shows. */
export function citation({
  authority,
  document,
  edition,
  section,
  covers,
  words,
  readAt,
  verified,
}: Citation): Html {
  const status = html`<span class="cited ${verified}">${VERIFIED_WORDS[verified]}</span>`
  if (verified === 'common-practice')
    return html`
      ${covers && html`${covers}: `}
      ${words && html`“${words}” `}
      ${status}
    `
  const place = [authority, document, edition, section].filter((part) => part !== null).join(', ')
  return html`
    ${covers && html`${covers}: `}
    ${place}
    ${words && html`: <q>${words}</q>`} ${status}
    ${address(readAt)}
  `
}

const address = (readAt: string | null): Html | null => {
  if (readAt === null) return null
  return /^https?:\/\//.test(readAt)
    ? html` <a href="${readAt}" rel="noreferrer">where we read it</a>`
    : html` <span class="soft">${readAt}</span>`
}

/** Several rules may have one source: it is named once. */
export function citations(list: readonly Citation[]): Html | null {
  const lines = [...new Set(list.map((it) => citation(it).text))]
  return lines.length === 0
    ? null
    : html`<ul class="citations">${lines.map((line) => html`<li>${markup(line)}</li>`)}</ul>`
}
