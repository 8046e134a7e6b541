import type { FormRead } from '../../../operations/forms/read-forms.ts'
import { type FieldPlace, fieldsOn, type TaughtSheet } from '../../../reading/family/taught-form.ts'
import { isDropped, type Witnessed, witnessedOf } from '../../../reading/family/witness.ts'
import type { Box } from '../../../records/source.ts'
import { documentPath } from '../documents/addresses.ts'
import { type Html, html } from '../html.ts'
import { pagePicturePath } from '../layout/addresses.ts'
import { formExportPath, formPath, formsPath } from './addresses.ts'
import { fieldWords, STATE_WORDS } from './words.ts'

export type FormPage = {
  readonly county: string
  readonly read: FormRead
  /** The name that came back from the form. */
  readonly typed: string | null
  readonly fault: string | null
}

/** One learned layout: its fields over a document it was learned from, those documents, and what can be done with it. */
export function formView({ county, read, typed, fault }: FormPage): Html {
  const { form, teachers, witnessed } = read
  const papers = [...new Set(teachers.map(({ document }) => document))]
  return html`
    <p class="crumb"><a href="${formsPath(county)}">All form layouts</a></p>
    <h1>${form.name}</h1>
    <p class="lead">This layout is ${STATE_WORDS[form.state]}. ${SAYS[form.state]}</p>
    ${fault !== null && html`<p class="fault" role="alert" id="form-fault">${fault}</p>`}
    <div class="actions">
      ${
        form.state !== 'in-force' &&
        html`
          <form method="post" action="${formPath(county, form.id)}/activation">
            <input type="hidden" name="version" value="${form.revision}">
            <label for="name">Name</label> <input
              id="name" name="name" value="${typed ?? form.name}" maxlength="80"
              required${fault !== null && html` aria-describedby="form-fault"`}
            > <button>Start using it</button>
          </form>
        `
      }
      ${
        form.state !== 'withdrawn' &&
        html`
          <form method="post" action="${formPath(county, form.id)}/withdrawal">
            <input type="hidden" name="version" value="${form.revision}">
            <button class="second">Stop using it</button>
          </form>
        `
      }
      <p>
        <a href="${formExportPath(county, form.id)}" download>Export it</a> (printed words and field
        positions, without any document’s values)
      </p>
    </div>
    ${form.taught.sheets.map((sheet, index) => {
      const page = form.shownPages[index]
      const picture =
        form.shownOn === null || page === undefined ? null : pagePicturePath(county, form.shownOn, page)
      return html`
        <section>
          <h2>Sheet ${index + 1}</h2>
          <div class="paper">${sheetView(sheet, picture)}</div>
          ${sheet.rows && html`<p>${SEVERAL}</p>`}
          ${fieldsTable(fieldsOn(sheet), witnessed)}
        </section>
      `
    })}
    <section>
      <h2>Documents it was learned from</h2>
      ${
        papers.length === 0
          ? html`
            <p>
              Imported from another system, where it was learned from ${form.taught.papers} documents.
            </p>
          `
          : html`
            <ul>
              ${papers.map(
                (id, index) => html`
                  <li><a href="${documentPath(county, id)}">Document ${index + 1}</a></li>
                `,
              )}
            </ul>
          `
      }
    </section>
  `
}

const SAYS = {
  proposed: 'It is not used yet. Check that each frame is on its value, then start using it.',
  'in-force': 'Documents with this layout are read with it and by their labels.',
  withdrawn: 'It is kept but no longer used. Confirmed permits do not change.',
} as const

const SEVERAL =
  'This sheet holds several permits. The frames are on the first one; each of the others is read the same way from its permit number.'

/** The fields over the picture; without one, over the printed words. */
function sheetView(sheet: TaughtSheet, picture: string | null): Html {
  const { widthPt, heightPt, marks } = sheet
  const fields = fieldsOn(sheet)
  const [w, h] = [1000, (1000 * heightPt) / widthPt]
  const rect = (name: string, box: Box, says: string): Html =>
    html`
      <rect
        class="${name}" x="${(box.x * w).toFixed(1)}" y="${(box.y * h).toFixed(1)}"
        width="${(box.w * w).toFixed(1)}" height="${(box.h * h).toFixed(1)}"
      >
        <title>${says}</title>
      </rect>
    `
  const below = picture
    ? html`<image href="${picture}" width="${w}" height="${h.toFixed(1)}" preserveAspectRatio="none"/>`
    : html`
      <rect width="${w}" height="${h.toFixed(1)}" fill="#fff"/>
      ${marks.map(
        ({ text, box }) =>
          html`
            <text
              x="${(box.x * w).toFixed(1)}" y="${((box.y + box.h) * h).toFixed(1)}"
              font-size="${(box.h * h).toFixed(1)}" textLength="${(box.w * w).toFixed(1)}"
              lengthAdjust="spacingAndGlyphs"
            >
              ${text}
            </text>
          `,
      )}
    `
  return html`
    <svg
      viewBox="0 0 ${w} ${h.toFixed(1)}" role="img"
      aria-label="The sheet with its ${fields.length} fields; they are listed below"
    >
      ${below}
      ${fields.map(
        (field, index) => html`
          ${rect('spot', field.box, fieldWords(field))}${number(field, index, w, h)}
        `,
      )}
    </svg>
  `
}

const number = ({ box }: FieldPlace, index: number, w: number, h: number): Html =>
  html`
    <text
      x="${(box.x * w + 3).toFixed(1)}" y="${(box.y * h + 11).toFixed(1)}" font-size="12"
      aria-hidden="true"
    >
      ${index + 1}
    </text>
  `

const fieldsTable = (fields: readonly FieldPlace[], witnessed: readonly Witnessed[]): Html =>
  html`
    <table>
      <caption>Fields, and on how many documents each read right or wrong</caption>
      <thead>
        <tr>
          <th scope="col">No.</th>
          <th scope="col">Field</th>
          <th scope="col">Unit if none</th>
          <th scope="col">Right</th>
          <th scope="col">Wrong</th>
        </tr>
      </thead>
      <tbody>
        ${fields.map((field, index) => {
          const own = witnessedOf(field, witnessed)
          return html`
              <tr>
                <td>${index + 1}</td>
                <th scope="row">${fieldWords(field)}</th>
                <td>${field.unit ?? '–'}</td>
                <td>${field.papers + own.agreed}</td>
                <td>${own.contradicted}${isDropped(field, own) && html` – no longer read`}</td>
              </tr>
            `
        })}
      </tbody>
    </table>
  `
