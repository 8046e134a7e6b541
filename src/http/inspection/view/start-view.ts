import { INSPECTION_FIELDS } from '../../../catalog/inspection-fields.ts'
import { listed } from '../../../words/sentence.ts'
import { type Html, html } from '../../pages/html.ts'
import { briefPath } from '../../pages/layout/addresses.ts'
import { sitePlanFigure } from '../../pages/parts/site-plan.ts'
import { formField } from '../form/fields.ts'
import { cautionsWhole } from './cautions.ts'
import { fieldView, type Shown } from './field.ts'
import { stepForm, stepHead } from './frame.ts'
import { liveView } from './live-view.ts'
import { satelliteView } from './place.ts'
import type { InspectionShown } from './shown.ts'

/** What would decide most of what is asked of the whole system. */
export const SYSTEM_LEAD = 'While you are here'

/** What is asked once: the cautions first, then the house, then the corners that every tie runs from. */
export function startView(shown: InspectionShown): Html {
  const { sheet, form, faults } = shown
  const fields: Shown = {
    typed: { occupancy: INSPECTION_FIELDS.occupancy.default, ...form.start },
    faults: faults.start ?? {},
    onRecord: {
      ...(sheet.system.bedrooms ? { bedroomsCounted: sheet.system.bedrooms } : {}),
      ...(sheet.reference?.baseline ? { 'reference.baseline': sheet.reference.baseline } : {}),
    },
  }
  const ask = (name: string): Html => fieldView(formField('inspection', name), fields)
  const content = html`
    <fieldset class="group">
      <legend><h2>The house</h2></legend>
      ${
        sheet.serves &&
        html`
          <p>
            <b>This system serves ${listed(sheet.serves)}.</b> Count bedrooms and people in all of them
            together. If you cannot, leave the count out and say why.
          </p>
        `
      }
      ${HOUSE.map(ask)}
    </fieldset>
    <fieldset class="group">
      <legend><h2>The ground, and signs that it does not drain</h2></legend>
      ${GROUND.map(ask)}
    </fieldset>
    <fieldset class="group">
      <legend><h2>The corners that ties run from</h2></legend>
      <p class="soft">
        Two corners of one wall. Facing that wall from outside, A is left and B is right.
      </p>
      ${CORNERS.map(ask)}
      ${(['cornerA', 'cornerB'] as const).map((name) => satelliteView('inspection', name, fields))}
    </fieldset>
    <section class="live" aria-labelledby="live-title">
      <h2 id="live-title">Results</h2>
      <div id="live" aria-live="polite">
        ${shown.live && liveView(shown.live, null, SYSTEM_LEAD)}
      </div>
    </section>
  `
  return html`
    ${stepHead(shown, 'Before you begin')}
    <p>
      <a href="${briefPath(sheet.county, sheet.parcel.number)}">
        The brief: what to expect and what to bring
      </a>
    </p>
    ${cautionsWhole(sheet.cautions)}
    ${stepForm(shown, content, { back: false, next: 'Next' })}
    <details class="plan-drawn">
      <summary>Where things are, drawn and in words</summary>
      ${sitePlanFigure(sheet.plan.svg, sheet.plan.words)}
    </details>
  `
}

/** What is seen walking around the house, and what those who live there say of it. */
const GROUND = [
  'ground',
  'notWalkedBecause',
  'backup',
  'discharge',
  'runBack',
  'dye',
  'leftOutBecause',
] as const satisfies readonly (keyof typeof INSPECTION_FIELDS)[]
/** Every other field of the inspection itself but its notes, which are asked for at the end. */
const HOUSE = Object.entries(INSPECTION_FIELDS).flatMap(([name, { value }]) =>
  value === 'group' || name === 'notes' || GROUND.some((it) => it === name) ? [] : [name],
)
const CORNERS = Object.keys(INSPECTION_FIELDS.reference.parts).map((part) => `reference.${part}`)
