import type { Place } from '../../../catalog/catalog.ts'
import { fieldWords } from '../../../words/fields.ts'
import { flag, type Html, html } from '../../pages/html.ts'
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
      ${satelliteView('component', 'fix', place)}
      ${
        fields.typed['tie.sideWords'] &&
        html`
          <input type="hidden" name="tie.sideWords" value="${fields.typed['tie.sideWords']}">
        `
      }
    </fieldset>
  `
}

/** A place by satellite: typed, or taken from the phone. Each has a button of its own, which says whose fields it fills. */
export function satelliteView(place: Place, name: 'fix' | 'cornerA' | 'cornerB', fields: Shown): Html {
  const parts = ['lat', 'lon', 'radiusFt'].map((part) => `${name}.${part}`)
  const { label } = fieldWords(place, name)
  const coverage = `${name}.coverage`
  return html`
    <details class="fix" ${flag(
      'open',
      parts.some((part) => fields.typed[part] || fields.faults[part]),
    )}>
      <summary>${name === 'fix' ? 'Place by satellite' : label}</summary>
      <p class="scripted">
        <button type="button" class="quiet" data-locate="${name}">
          Take this phone’s place
        </button> <span class="soft" data-located="${name}" role="status"></span>
      </p>
      <div class="fields">${parts.map((part) => fieldView(formField(place, part), fields))}</div>
      ${
        fields.typed[coverage] &&
        html`<input type="hidden" name="${coverage}" value="${fields.typed[coverage]}">`
      }
    </details>
  `
}
