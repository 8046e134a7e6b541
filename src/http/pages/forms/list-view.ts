import { FORM_STATES, type FormOnFile, type FormState } from '../../../store/taught-forms.ts'
import { documentsPath } from '../documents/addresses.ts'
import { type Html, html } from '../html.ts'
import { formPath, formsPath } from './addresses.ts'
import { STATE_WORDS } from './words.ts'

export type FormList = {
  readonly county: string
  readonly state: FormState
  readonly forms: readonly FormOnFile[]
  readonly next: string | null
}

const NONE: { readonly [S in FormState]: string } = {
  proposed:
    'No form is proposed. After three confirmed papers of one form it comes here, to be looked at and taken up.',
  'in-force': 'No form is in force: papers are read by their labels alone.',
  withdrawn: 'No form is withdrawn.',
}

/** The forms that papers taught, by what has become of them. */
export const listView = ({ county, state, forms, next }: FormList): Html =>
  html`<p class="crumb"><a href="${documentsPath(county)}">All papers</a></p><h1>Forms</h1><p class="lead">What confirmed papers of one form have in common: its printed words, and where each value lies. Papers are read by a form once a person has taken it up.</p><nav aria-label="Forms by state"><ul>${FORM_STATES.map(
    (it) =>
      html`<li><a href="${formsPath(county)}?state=${it}"${it === state && html` aria-current="true"`}>${STATE_WORDS[it]}</a></li>`,
  )}</ul></nav>${
    forms.length === 0
      ? html`<p>${NONE[state]}</p>`
      : html`<ul class="hits">${forms.map(
          (it) =>
            html`<li><a href="${formPath(county, it.id)}">${it.name}</a> <span class="soft">${describe(it)}</span></li>`,
        )}</ul>`
  }${next !== null && html`<p><a class="button" rel="next" href="${formsPath(county)}?state=${state}&amp;after=${next}">Next page</a></p>`}`

function describe({ taught, shownOn }: FormOnFile): string {
  const fields = taught.sheets.reduce((sum, sheet) => sum + sheet.fields.length, 0)
  const from = `learned from ${taught.papers} papers${shownOn === null ? ', brought from elsewhere' : ''}`
  return `${fields} fields, ${from}`
}
