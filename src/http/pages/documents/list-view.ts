import { dayOf } from '../../../base/plain-date.ts'
import { DOCUMENT_STATES, type Document, type DocumentState } from '../../../store/documents.ts'
import { formsPath } from '../forms/addresses.ts'
import { type Html, html } from '../html.ts'
import { dayInWords } from '../words/dates.ts'
import { documentPath, documentsPath } from './addresses.ts'

const STATE_WORDS: { readonly [S in DocumentState]: string } = {
  received: 'waiting to be read',
  reading: 'being read',
  proposed: 'to confirm',
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

/** The documents of one state, in the order they came. */
export const listView = ({ county, state, documents, next, before }: ListPage): Html =>
  html`
    ${
      before &&
      html`
        <p role="status" class="notice">
          ${before.says} <a href="${documentPath(county, before.id)}">Open it</a>
        </p>
      `
    }
    <h1>Documents</h1>
    <p><a href="${formsPath(county)}">Learned form layouts</a></p>
    <nav aria-label="Documents by state">
      <ul>
        ${DOCUMENT_STATES.map(
          (it) =>
            html`
              <li>
                <a
                  href="${documentsPath(county)}?state=${it}"${
                    it === state &&
                    html` aria-current="true"
                  `
                  }
                >
                  ${STATE_WORDS[it]}
                </a>
              </li>
            `,
        )}
      </ul>
    </nav>
    ${
      documents.length === 0
        ? html`<p class="lead">No documents here: ${STATE_WORDS[state]}.</p>`
        : html`
          <ul class="hits">
            ${documents.map(
              (it) =>
                html`
                  <li>
                    <a href="${documentPath(county, it.id)}">${it.fileName ?? 'Document'}</a> <span
                      class="soft"
                    >
                      ${describe(it)}
                    </span>
                  </li>
                `,
            )}
          </ul>
        `
    }
    ${
      next !== null &&
      html`
        <p>
          <a class="button" rel="next" href="${documentsPath(county)}?state=${state}&amp;after=${next}">
            Next page
          </a>
        </p>
      `
    }
  `

function describe({ pages, permits, reason, receivedAt }: Document): string {
  const parts = [
    pages === null ? null : `${pages} ${pages === 1 ? 'page' : 'pages'}`,
    permits.length > 1 ? `${permits.length} permits` : null,
    `received ${dayInWords(dayOf(receivedAt))}`,
    reason,
  ]
  return parts.filter((it) => it !== null).join(', ')
}
