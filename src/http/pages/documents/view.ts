import type { DocumentRead } from '../../../operations/documents/read-document.ts'
import { type Html, html } from '../html.ts'
import { parcelPath } from '../layout/addresses.ts'
import { documentPath, documentsPath } from './addresses.ts'
import { confirmedIn, confirmedShown, confirmedValues } from './confirmed.ts'
import { type CutsShown, cutsView } from './cuts-view.ts'
import { formView } from './form-view.ts'
import { type FormShown, pagesOfPermit } from './present.ts'
import { picturesOf, scanView } from './scan-view.ts'

export type ConfirmPage = {
  readonly county: string
  readonly read: DocumentRead
  /** Null where the document is not waiting to be confirmed. */
  readonly form: FormShown | null
  readonly cuts: CutsShown
  readonly aside: { readonly typed: string; readonly fault: string | null }
  /** The next one waiting, to skip this one. */
  readonly next: string | null
  /** The one confirmed or set aside just before. */
  readonly before: { readonly id: string; readonly says: string } | null
}

const titleOf = ({ document }: DocumentRead): string => document.fileName ?? 'Document'

export function confirmView(page: ConfirmPage): Html {
  const { county, read, form, before, next } = page
  const { document } = read
  const pictures = picturesOf(county, read)
  const head = html`
    ${
      before &&
      html`
        <p role="status" class="notice">
          ${before.says} <a href="${documentPath(county, before.id)}">Open it</a>
        </p>
      `
    }
    <p class="crumb">
      <a href="${documentsPath(county)}">All documents</a>
      ${next !== null && html` · <a href="${documentPath(county, next)}">Skip to next</a>`}
    </p>
    <h1>${titleOf(read)}</h1>
  `
  if (form === null) return html`${head}${standing(county, read, page.aside)}`
  const proposal = read.proposals.get(form.permit) ?? null
  const all = [...form.fields, ...form.parts.flatMap(({ fields }) => fields)]
  const places = all.flatMap(({ place }) => place ?? [])
  const at = all.find(({ first, place }) => first && place)?.place ?? null
  return html`
    ${head}
    ${document.reason !== null && html`<p class="notice">${document.reason}</p>`}
    ${cutsView(county, page.cuts)}${KEYS}
    <div class="confirm">
      ${scanView(pagesOfPermit(read, proposal), places, at, pictures)}
      <div>
        ${formView(county, document.id, form, pictures)}${asideForm(county, document, page.aside)}
      </div>
    </div>
  `
}

const KEYS = html`
  <p class="soft">
    Check each value against the scan. Where it says “check this”, mark the box or correct the value.
    Put “?” before a value that is on the document but cannot be
    read. <span class="with-keys" hidden>
      <kbd>Enter</kbd> marks a value as checked and goes to the next one to check. <kbd>Tab</kbd> goes
      to the next value. <kbd>Ctrl</kbd> <kbd>Enter</kbd> confirms all values and opens the next
      document.
    </span>
  </p>
`

const asideForm = (
  county: string,
  { id, revision }: DocumentRead['document'],
  { typed, fault }: ConfirmPage['aside'],
): Html =>
  html`
    <details class="aside"${fault !== null && html` open`}>
      <summary>Set aside</summary>
      <form method="post" action="${documentPath(county, id)}/aside">
        <input type="hidden" name="version" value="${revision}">
        <label for="reason">Reason</label>
        ${fault !== null && html`<p class="fault" id="reason-fault">${fault}</p>`}
        <input
          id="reason" name="reason" value="${typed}"
          maxlength="500"${fault !== null && html` aria-invalid="true" aria-describedby="reason-fault"`}
        > <button class="second">Set aside and go to next</button>
      </form>
    </details>
  `

/** A document that is not waiting: its state, and what can be done about it. */
function standing(county: string, read: DocumentRead, { fault }: ConfirmPage['aside']): Html {
  const { document, transcriptions } = read
  switch (document.state) {
    case 'received':
    case 'reading':
      return html`
        <p class="lead" role="status">This document is being read. The page refreshes by itself.</p>
      `
    case 'failed':
      return html`
        <p class="lead">This document could not be read: ${document.reason ?? 'no reason was given'}</p>
      `
    case 'set-aside':
      return html`
        <p class="lead">Set aside: ${document.reason}</p>
        ${fault !== null && html`<p class="fault">${fault}</p>`}
        <form method="post" action="${documentPath(county, document.id)}/return">
          <input type="hidden" name="version" value="${document.revision}">
          <button>Put it back in the list to confirm</button>
        </form>
        ${scanOnly(county, read)}
      `
    default:
      return html`
        ${
          confirmedIn(transcriptions).length > confirmedShown(transcriptions).length &&
          html`
            <p>
              ${confirmedIn(transcriptions).length} permits of this document are confirmed. The last
              ${confirmedShown(transcriptions).length} are shown; every one is in the file of its parcel.
            </p>
          `
        }
        ${confirmedShown(transcriptions).map((made) => {
          const proposal = made.proposal === null ? null : (read.proposals.get(made.proposal) ?? null)
          const values = confirmedValues(made, proposal)
          const corrected = values.filter(({ isCorrected }) => isCorrected).length
          return html`
            <h2>
              Permit ${made.typed['/number']}, <a href="${parcelPath(county, made.parcel)}">
                ${made.parcel}
              </a>
            </h2>
            <p>
              Confirmed. ${
                corrected === 0
                  ? 'All values are as they were read.'
                  : `${corrected} of ${values.length} values were corrected.`
              }
            </p>
            <div class="scroll">
              <table>
                <thead>
                  <tr>
                    <th scope="col">Value</th>
                    <th scope="col">Confirmed</th>
                    <th scope="col">As read</th>
                  </tr>
                </thead>
                <tbody>
                  ${values.map(
                    ({ what, part, value, read: asRead, isCorrected }) =>
                      html`
                        <tr>
                          <th scope="row">
                            ${part !== null && html`<span class="soft">${part}</span> `}
                            ${what}
                          </th>
                          <td>${value || 'left out'}</td>
                          <td>${isCorrected ? html`<b>${asRead || 'not read'}</b>` : 'same'}</td>
                        </tr>
                      `,
                  )}
                </tbody>
              </table>
            </div>
          `
        })}
        ${scanOnly(county, read)}
      `
  }
}

const scanOnly = (county: string, read: DocumentRead): Html =>
  html`
    <div class="confirm">
      ${scanView(pagesOfPermit(read, null), [], null, picturesOf(county, read))}
    </div>
  `
