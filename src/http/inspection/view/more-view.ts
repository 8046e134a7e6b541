import { COMPONENT_KINDS } from '../../../catalog/kinds.ts'
import { type Html, html } from '../../pages/html.ts'
import { headed } from '../../pages/words/plain.ts'
import { inspectionPath } from '../addresses.ts'
import { stepsOf } from '../sheet/steps.ts'
import { faultOf, label, type Shown, select, textInput } from './field.ts'
import { stepForm, stepHead } from './frame.ts'
import { photoForm, photosView } from './photos-view.ts'
import type { InspectionShown } from './shown.ts'

/** Things that answer to nothing in service on record: what was never on it, and what it says is gone and is not. */
export function moreView(shown: InspectionShown): Html {
  const { sheet, form, faults } = shown
  const fields: Shown = { typed: {}, faults: faults.more ?? {} }
  const added = stepsOf(sheet, form).filter((step) => step.is === 'part' && step.recorded === null)
  const kinds = COMPONENT_KINDS.map((value) => ({ value, says: headed(value) }))
  const former = sheet.former.map(({ key, label: name, says }) => ({ value: key, says: `${name}, ${says}` }))
  const content = html`
    <p class="lead">Did you find anything that is not on record?</p>
    ${
      added.length > 0 &&
      html`
        <ul class="added">
          ${added.map(
            ({ name, title }) => html`
              <li>
                <a
                  href="${inspectionPath(sheet.county, sheet.parcel.number, name)}"
                  data-step="${name}"
                >
                  ${title}
                </a>
              </li>
            `,
          )}
        </ul>
      `
    }
    <fieldset class="group">
      <legend><h2>Add one</h2></legend>
      <div class="ask">
        ${label({ name: 'newKind', label: 'What it is' })}
        ${faultOf('newKind', fields)}
        ${select('newKind', [{ value: '', says: 'choose' }, ...kinds], fields)}
      </div>
      <div class="ask">
        ${label({ name: 'newName', label: 'What you call it', hint: 'if it needs a name: old pit' })}
        ${textInput('newName', 'text', fields)}
      </div>
      ${
        former.length > 0 &&
        html`
          <div class="ask wide">
            ${label({ name: 'newKey', label: 'Is it one that the record took out of service?' })}
            ${select('newKey', [{ value: '', says: 'no' }, ...former], fields)}
          </div>
        `
      }
      <p><button class="quiet" name="to" value="add">Add it</button></p>
    </fieldset>
    ${photosView(shown, null)}
  `
  return html`
    ${stepHead(shown, 'Not on record')}
    ${stepForm(shown, content, { back: true, next: added.length > 0 ? 'Nothing else' : 'Nothing' })}
    ${photoForm(shown)}
  `
}
