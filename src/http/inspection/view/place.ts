import { type Html, html } from '../../pages/html.ts'
import { formField } from '../form/fields.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'
import { fieldView, type Shown } from './field.ts'

/** Two ties place it for the next person; a fix helps where no tape reaches. */
export function placeView({ reference }: InspectionSheet, fields: Shown): Html {
  const place = { ...fields, onRecord: {} }
  const onRecord = fields.onRecord?.tie
  const corners = reference
    ? `A is ${reference.a}, B is ${reference.b}`
    : 'A and B are the corners you named at the start'
  return html`
    <fieldset class="group">
      <legend><h2>Where it is</h2></legend>
      <p class="soft">${corners}. Tape to its middle.</p>
      ${onRecord && html`<p class="rec"><span class="soft">on record</span> ${onRecord}</p>`}
      ${['tie.a', 'tie.b'].map((name) => fieldView(formField('component', name), place))}
      ${fieldView(formField('component', 'tie.side'), place)}
      <details class="fix" ${fields.typed['fix.lat'] && html`open`}>
        <summary>Place by satellite</summary>
        <p class="scripted">
          <button type="button" class="quiet" id="locate">
            Take this phone’s place
          </button> <span class="soft" id="located" role="status"></span>
        </p>
        <div class="fields">
          ${['fix.lat', 'fix.lon', 'fix.radiusFt'].map((name) =>
            fieldView(formField('component', name), place),
          )}
        </div>
        ${
          fields.typed['fix.coverage'] &&
          html`
            <input type="hidden" name="fix.coverage" value="${fields.typed['fix.coverage']}">
          `
        }
      </details>
      ${
        fields.typed['tie.sideWords'] &&
        html`
          <input type="hidden" name="tie.sideWords" value="${fields.typed['tie.sideWords']}">
        `
      }
    </fieldset>
  `
}
