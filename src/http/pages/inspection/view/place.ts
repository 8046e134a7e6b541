import { SIDES } from '../../../../records/component.ts'
import { type Html, html } from '../../html.ts'
import { PLACE_FIELDS } from '../form/asked.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'
import { choices, faultOf, fieldView, label, type Shown, textInput } from './field.ts'

const SIDE_WORDS: { readonly [S in (typeof SIDES)[number]]: string } = {
  away: 'Away from the house',
  toward: 'On the house side',
}

/** Two ties place it for the next person; a fix helps where no tape reaches. */
export function placeView({ reference }: InspectionSheet, fields: Shown): Html {
  const place = { ...fields, onRecord: {} }
  const onRecord = fields.onRecord?.tie
  const corners = reference
    ? `A is ${reference.a}, B is ${reference.b}`
    : 'A and B are the corners you named at the start'
  return html`<fieldset class="group"><legend><h2>Where it is</h2></legend><p class="soft">${corners}. Tape to its middle.</p>${onRecord && html`<p class="rec"><span class="soft">on record</span> ${onRecord}</p>`}${PLACE_FIELDS.map((field) => fieldView(field, place))}<fieldset class="ask choices"><legend>Which side of that wall</legend>${faultOf('tie.side', place)}${choices(
    'tie.side',
    SIDES.map((value) => ({ value, says: SIDE_WORDS[value] })),
    place,
    true,
  )}</fieldset><details class="fix" ${fields.typed['fix.lat'] && html`open`}><summary>Place by satellite</summary><p class="scripted"><button type="button" class="quiet" id="locate">Take this phone’s place</button> <span class="soft" id="located" role="status"></span></p><div class="fields">${(
    [
      ['fix.lat', 'Latitude', 'degrees, north is plus'],
      ['fix.lon', 'Longitude', 'degrees, west is minus'],
      ['fix.radiusFt', 'Within', 'feet, as the receiver says'],
    ] as const
  ).map(
    ([name, says, hint]) =>
      html`<div class="ask">${label({ name, label: says, hint })}${faultOf(name, place)}${textInput(name, 'text', place)}</div>`,
  )}</div>${fields.typed['fix.coverage'] && html`<input type="hidden" name="fix.coverage" value="${fields.typed['fix.coverage']}">`}</details>${fields.typed['tie.sideWords'] && html`<input type="hidden" name="tie.sideWords" value="${fields.typed['tie.sideWords']}">`}</fieldset>`
}
