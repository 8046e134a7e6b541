import { WALLS } from '../../../../records/component.ts'
import { OCCUPANCY } from '../../../../records/findings.ts'
import { type Html, html } from '../../html.ts'
import { briefPath } from '../../layout/addresses.ts'
import { sitePlanFigure } from '../../parts/site-plan.ts'
import { headed } from '../../words/plain.ts'
import { GROUND, length } from '../form/fields.ts'
import { cautionsWhole } from './cautions.ts'
import {
  choices,
  describes,
  faultOf,
  fieldView,
  idOf,
  label,
  type Shown,
  select,
  textInput,
} from './field.ts'
import { stepForm, stepHead } from './frame.ts'
import { liveView } from './live-view.ts'
import type { InspectionShown } from './shown.ts'

const OCCUPANCY_WORDS: { readonly [O in (typeof OCCUPANCY)[number]]: string } = {
  occupied: 'Lived in',
  vacant: 'Vacant',
  unknown: 'Can’t tell',
}

/** What would decide most of what is asked of the whole system. */
export const SYSTEM_LEAD = 'While you are here'

/** What is asked once: the cautions first, then the house, then the corners that every tie runs from. */
export function startView(shown: InspectionShown): Html {
  const { sheet, form, faults } = shown
  const fields: Shown = {
    typed: form.start,
    faults: faults.start ?? {},
    onRecord: {
      ...(sheet.system.bedrooms ? { bedroomsCounted: sheet.system.bedrooms } : {}),
      ...(sheet.reference?.baseline ? { 'reference.baseline': sheet.reference.baseline } : {}),
    },
  }
  const content = html`<fieldset class="group"><legend><h2>The house</h2></legend>${date('inspectedOn', 'Day of the inspection', fields)}<fieldset class="ask choices"><legend>Is it lived in?</legend>${choices(
    'occupancy',
    OCCUPANCY.map((value) => ({ value, says: OCCUPANCY_WORDS[value] })),
    { ...fields, typed: { occupancy: 'unknown', ...form.start } },
  )}</fieldset>${number('people', 'People living there', fields)}${number('bedroomsCounted', 'Bedrooms', fields, 'counted in the house, not from a listing')}${date('lastPumpedOn', 'Last pumped', fields, 'if anybody knows the day')}</fieldset>${corners(fields)}<section class="live" aria-labelledby="live-title"><h2 id="live-title">What it comes to</h2><div id="live" aria-live="polite">${shown.live && liveView(shown.live, null, SYSTEM_LEAD)}</div></section>`
  return html`${stepHead(shown, 'Before you begin')}<p><a href="${briefPath(sheet.county, sheet.parcel.number)}">The brief: what to expect and what to bring</a></p>${cautionsWhole(sheet.cautions)}${stepForm(shown, content, { back: false, next: 'Next' })}<details class="plan-drawn"><summary>Where things are, drawn and in words</summary>${sitePlanFigure(sheet.plan.svg, sheet.plan.words)}</details>`
}

const corners = (fields: Shown): Html =>
  html`<fieldset class="group"><legend><h2>The corners that ties run from</h2></legend><p class="soft">Two corners of one wall. Facing that wall from outside, A is left and B is right.</p>${(
    [
      ['reference.a', 'Corner A'],
      ['reference.b', 'Corner B'],
    ] as const
  ).map(
    ([name, says]) =>
      html`<div class="ask">${label({ name, label: says })}${faultOf(name, fields)}${textInput(name, 'text', fields)}</div>`,
  )}<div class="ask">${label({ name: 'reference.wall', label: 'Which wall' })}${faultOf('reference.wall', fields)}${select(
    'reference.wall',
    [{ value: '', says: 'not said' }, ...WALLS.map((value) => ({ value, says: headed(value) }))],
    fields,
  )}</div>${fieldView(length('reference.baseline', 'From A to B', GROUND), fields)}<div class="ask">${label({ name: 'reference.bearingDeg', label: 'Compass from A to B', hint: 'degrees' })}${faultOf('reference.bearingDeg', fields)}${textInput('reference.bearingDeg', 'decimal', fields)}</div></fieldset>`

const date = (name: string, says: string, fields: Shown, hint?: string): Html =>
  html`<div class="ask">${label({ name, label: says, ...(hint ? { hint } : {}) })}${faultOf(name, fields)}<input type="date" id="${idOf(name)}" name="${name}" value="${fields.typed[name]}"${describes(name, fields)}></div>`

const number = (name: string, says: string, fields: Shown, hint?: string): Html =>
  html`<div class="ask">${label({ name, label: says, ...(hint ? { hint } : {}) })}${fields.onRecord?.[name] && html`<p class="rec"><span class="soft">on record</span> ${fields.onRecord[name]}</p>`}${faultOf(name, fields)}${textInput(name, 'numeric', fields)}</div>`
