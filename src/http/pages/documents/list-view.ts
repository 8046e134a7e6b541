import { DOCUMENT_STATES, type Document, type DocumentState } from '../../../store/documents.ts'
import { formsPath } from '../forms/addresses.ts'
import { type Html, html } from '../html.ts'
import { documentPath, documentsPath } from './addresses.ts'

const STATE_WORDS: { readonly [S in DocumentState]: string } = {
  received: 'not read yet',
  reading: 'being read',
  proposed: 'waiting to be confirmed',
  confirmed: 'confirmed',
  'set-aside': 'set aside',
  failed: 'could not be read',
}

export type ListPage = {
  readonly county: string
  readonly state: DocumentState
  readonly documents: readonly Document[]
  readonly next: string | null
  readonly before: { readonly id: string; readonly says: string } | null
}

/** The papers of one state, in the order they came. */
export const listView = ({ county, state, documents, next, before }: ListPage): Html =>
  html`${
    before &&
    html`<p role="status" class="notice">${before.says} <a href="${documentPath(county, before.id)}">Look at it</a></p>`
  }<h1>Papers</h1><p><a href="${formsPath(county)}">Forms that confirmed papers taught</a></p><nav aria-label="Papers by state"><ul>${DOCUMENT_STATES.map(
    (it) =>
      html`<li><a href="${documentsPath(county)}?state=${it}"${it === state && html` aria-current="true"`}>${STATE_WORDS[it]}</a></li>`,
  )}</ul></nav>${
    documents.length === 0
      ? html`<p class="lead">No paper is ${STATE_WORDS[state]}.</p>`
      : html`<ul class="hits">${documents.map(
          (it) =>
            html`<li><a href="${documentPath(county, it.id)}">${it.fileName ?? 'A paper'}</a> <span class="soft">${describe(it)}</span></li>`,
        )}</ul>`
  }${next !== null && html`<p><a class="button" rel="next" href="${documentsPath(county)}?state=${state}&amp;after=${next}">Next page</a></p>`}`

function describe({ pages, proposals, reason, receivedAt }: Document): string {
  const parts = [
    pages === null ? null : `${pages} ${pages === 1 ? 'page' : 'pages'}`,
    proposals.length > 1 ? `${proposals.length} permits` : null,
    `came ${receivedAt.toISOString().slice(0, 10)}`,
    reason,
  ]
  return parts.filter((it) => it !== null).join(', ')
}
