import { fieldsOn } from '../../../reading/family/taught-form.ts'
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
  proposed: 'No new layouts. After you confirm three documents with the same form, its layout appears here.',
  'in-force': 'No layout is in use. Documents are read by their labels alone.',
  withdrawn: 'No layout has been retired.',
}

/** The learned form layouts, by state. */
export const listView = ({ county, state, forms, next }: FormList): Html =>
  html`
    <p class="crumb"><a href="${documentsPath(county)}">All documents</a></p>
    <h1>Learned form layouts</h1>
    <p class="lead">
      Asfound learns a form’s layout from documents you confirm: its printed words and where each value
      is. It uses a layout once you turn it on.
    </p>
    <nav aria-label="Layouts by state">
      <ul>
        ${FORM_STATES.map(
          (it) =>
            html`
              <li>
                <a href="${formsPath(county)}?state=${it}"${it === state && html` aria-current="true"`}>
                  ${STATE_WORDS[it]}
                </a>
              </li>
            `,
        )}
      </ul>
    </nav>
    ${
      forms.length === 0
        ? html`<p>${NONE[state]}</p>`
        : html`
          <ul class="hits">
            ${forms.map(
              (it) =>
                html`
                  <li>
                    <a href="${formPath(county, it.id)}">${it.name}</a> <span class="soft">
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
          <a class="button" rel="next" href="${formsPath(county)}?state=${state}&amp;after=${next}">
            Next page
          </a>
        </p>
      `
    }
  `

function describe({ taught, shownOn }: FormOnFile): string {
  const fields = taught.sheets.reduce((sum, sheet) => sum + fieldsOn(sheet).length, 0)
  const from = `learned from ${taught.papers} documents${shownOn === null ? ', imported' : ''}`
  return `${fields} fields, ${from}`
}
