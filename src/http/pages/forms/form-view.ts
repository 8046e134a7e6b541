import type { FormRead } from '../../../operations/forms/read-forms.ts'
import type { FieldPlace, TaughtSheet } from '../../../reading/family/taught-form.ts'
import type { Box } from '../../../records/source.ts'
import { documentPath } from '../documents/addresses.ts'
import { type Html, html } from '../html.ts'
import { pagePicturePath } from '../layout/addresses.ts'
import { formExportPath, formPath, formsPath } from './addresses.ts'
import { fieldWords, STATE_WORDS } from './words.ts'

export type FormPage = {
  readonly county: string
  readonly read: FormRead
  /** What came back from the form that takes it up. */
  readonly typed: string | null
  readonly fault: string | null
}

/** One taught form: its fields over a picture of a paper that taught it, who taught it, and what can be done with it. */
export function formView({ county, read, typed, fault }: FormPage): Html {
  const { form, teachers } = read
  const papers = [...new Set(teachers.map(({ document }) => document))]
  return html`<p class="crumb"><a href="${formsPath(county)}">All forms</a></p><h1>${form.name}</h1><p class="lead">This form is ${STATE_WORDS[form.state]}. ${SAYS[form.state]}</p>${fault !== null && html`<p class="fault" role="alert" id="form-fault">${fault}</p>`}<div class="actions">${
    form.state !== 'in-force' &&
    html`<form method="post" action="${formPath(county, form.id)}/taking-up"><input type="hidden" name="version" value="${form.revision}"><label for="name">Its name</label> <input id="name" name="name" value="${typed ?? form.name}" maxlength="80" required${fault !== null && html` aria-describedby="form-fault"`}> <button>Take it up</button></form>`
  }${
    form.state !== 'withdrawn' &&
    html`<form method="post" action="${formPath(county, form.id)}/withdrawal"><input type="hidden" name="version" value="${form.revision}"><button class="second">Withdraw it</button></form>`
  }<p><a href="${formExportPath(county, form.id)}" download>Export it</a>: printed words and places, no value of any paper.</p></div>${form.taught.sheets.map(
    (sheet, index) => {
      const page = form.shownPages[index]
      const picture =
        form.shownOn === null || page === undefined ? null : pagePicturePath(county, form.shownOn, page)
      return html`<section><h2>Sheet ${index + 1}</h2><div class="paper">${sheetView(sheet, picture)}</div>${fieldsTable(sheet.fields)}</section>`
    },
  )}<section><h2>Papers that taught it</h2>${
    papers.length === 0
      ? html`<p>It was brought from elsewhere, where ${form.taught.papers} papers taught it.</p>`
      : html`<ul>${papers.map((id, index) => html`<li><a href="${documentPath(county, id)}">Paper ${index + 1}</a></li>`)}</ul>`
  }</section>`
}

const SAYS = {
  proposed: 'Nothing is read by it yet. Look whether each frame lies where its value stands, and take it up.',
  'in-force': 'Papers of this form are read by it as well as by their labels.',
  withdrawn:
    'It is kept, and nothing is read by it. Permits that were confirmed stay as they were confirmed.',
} as const

/** The places over the picture; where there is none, over the printed words as they stand. */
function sheetView({ widthPt, heightPt, fields, marks }: TaughtSheet, picture: string | null): Html {
  const [w, h] = [1000, (1000 * heightPt) / widthPt]
  const rect = (name: string, box: Box, says: string): Html =>
    html`<rect class="${name}" x="${(box.x * w).toFixed(1)}" y="${(box.y * h).toFixed(1)}" width="${(box.w * w).toFixed(1)}" height="${(box.h * h).toFixed(1)}"><title>${says}</title></rect>`
  const below = picture
    ? html`<image href="${picture}" width="${w}" height="${h.toFixed(1)}" preserveAspectRatio="none"/>`
    : html`<rect width="${w}" height="${h.toFixed(1)}" fill="#fff"/>${marks.map(
        ({ text, box }) =>
          html`<text x="${(box.x * w).toFixed(1)}" y="${((box.y + box.h) * h).toFixed(1)}" font-size="${(box.h * h).toFixed(1)}" textLength="${(box.w * w).toFixed(1)}" lengthAdjust="spacingAndGlyphs">${text}</text>`,
      )}`
  return html`<svg viewBox="0 0 ${w} ${h.toFixed(1)}" role="img" aria-label="The sheet with the place of each of its ${fields.length} fields; they are listed below">${below}${fields.map(
    (field, index) => html`${rect('spot', field.box, fieldWords(field))}${number(field, index, w, h)}`,
  )}</svg>`
}

const number = ({ box }: FieldPlace, index: number, w: number, h: number): Html =>
  html`<text x="${(box.x * w + 3).toFixed(1)}" y="${(box.y * h + 11).toFixed(1)}" font-size="12" aria-hidden="true">${index + 1}</text>`

const fieldsTable = (fields: readonly FieldPlace[]): Html =>
  html`<table><caption>Its fields</caption><thead><tr><th scope="col">No.</th><th scope="col">Field</th><th scope="col">Unit where none is written</th><th scope="col">Right on papers</th></tr></thead><tbody>${fields.map(
    (field, index) =>
      html`<tr><td>${index + 1}</td><th scope="row">${fieldWords(field)}</th><td>${field.unit ?? '–'}</td><td>${field.papers}</td></tr>`,
  )}</tbody></table>`
