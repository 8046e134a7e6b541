import { fieldAt } from '../../../catalog/catalog.ts'
import { NOT_REACHED_REASONS, SEARCH_METHODS, SEARCH_OUTCOMES } from '../../../catalog/choices.ts'
import { COMPONENT_KINDS, type ComponentKind, isVessel } from '../../../catalog/kinds.ts'
import { NOT_REACHED_WORDS, OUTCOME_WORDS, SEARCH_WORDS } from '../../../words/field-choices.ts'
import { fieldNoun } from '../../../words/fields.ts'
import { flag, type Html, html } from '../../pages/html.ts'
import { headed } from '../../pages/words/plain.ts'
import { formField, type Group, groupsFor, isInGroups, isOpened } from '../form/fields.ts'
import { filled, kindOf } from '../form/typed.ts'
import type { PartStep } from '../sheet/steps.ts'
import { cautionsBrief } from './cautions.ts'
import { choices, faultOf, fieldView, label, type Shown, select, textInput, ticks } from './field.ts'
import { stepForm, stepHead } from './frame.ts'
import { liveView } from './live-view.ts'
import { photoForm, photosView } from './photos-view.ts'
import { placeView } from './place.ts'
import { askedView } from './rows.ts'
import type { InspectionShown } from './shown.ts'

/** One component: the cautions, the record, whether it was found, and then only what that calls for. */
export function partView(shown: InspectionShown, { part, recorded, title, name }: PartStep): Html {
  const fields: Shown = {
    typed: part.typed,
    faults: shown.faults[name] ?? {},
    ...(recorded ? { onRecord: recorded.onRecord } : {}),
  }
  const kind = kindOf(part)
  const capacity = recorded?.onRecord.capacity ?? null
  const form = html`
    ${isOpened(kind) && cautionsBrief(shown.sheet.cautions, kind)}
    ${recorded ? recordBox(recorded) : nameField(part.label, fields)}
    ${outcome(fields)}
    <div class="when-found">
      ${[...groupsFor(kind), ...alsoNoted(fields, kind)].map((group, index) =>
        groupView(group, fields, index === 0 ? kindField(part.kind, fields) : null),
      )}
      ${placeView(shown.sheet, fields)}
    </div>
    ${search(fields)}
    ${notReached(fields)}
    ${fieldView(formField('component', 'note'), fields)}
    ${photosView(shown, part.label)}
    <section class="live" aria-labelledby="live-title">
      <h2 id="live-title">Results</h2>
      <div id="live" aria-live="polite">
        ${shown.live && liveView(shown.live, isVessel(kind) ? capacity : null)}
      </div>
    </section>
    ${
      !recorded &&
      html`
        <p>
          ${
            shown.asks
              ? html`
              <button class="quiet" name="to" value="remove-sure">Yes, take it off the list</button>
            `
              : html`<button class="quiet" name="to" value="remove">Take this off the list</button>`
          }
        </p>
      `
    }
  `
  return html`
    ${stepHead(shown, title)}
    ${stepForm(shown, form, { back: true, next: 'Next' })}
    ${photoForm(shown)}
  `
}

const recordBox = ({ kind, onRecord, where, usual }: NonNullable<PartStep['recorded']>): Html =>
  html`
    <div class="rec record">
      <p>
        <b>On record:</b> ${
          Object.keys(onRecord).length === 0
            ? 'only that it is there'
            : Object.entries(onRecord).map(
                ([measure, says], at) => html`${at > 0 && ' · '}${recordLine(measure, says, kind)}`,
              )
        }
      </p>
      ${where.length > 0 && html`<p><b>Where to look:</b> ${where.join(' Or: ')}</p>`}
      ${
        usual.length > 0 &&
        html`
          <details>
            <summary>Usual, not on record</summary>
            <ul>${usual.map((says) => html`<li>${says}</li>`)}</ul>
          </details>
        `
      }
    </div>
  `

/** Material, shape and size are known by what they say; a bare length is not. */
function recordLine(measure: string, says: string, kind: ComponentKind): string {
  const { value } = fieldAt('component', measure) ?? { value: 'line' }
  if (value === 'choice' || value === 'volume') return says
  return `${fieldNoun('component', measure, kind)} ${says}`
}

const nameField = (name: string, fields: Shown): Html => {
  const own = { ...fields, typed: { label: name } }
  return html`
    <div class="ask wide">
      ${label({ name: 'label', label: 'What you call it' })}
      ${faultOf('label', fields)}
      ${textInput('label', 'text', own)}
    </div>
  `
}

const outcome = (fields: Shown): Html =>
  html`
    <fieldset class="ask choices outcome">
      <legend>Was it found?</legend>
      ${faultOf('outcome', fields)}
      ${choices(
        'outcome',
        SEARCH_OUTCOMES.map((value) => ({ value, says: OUTCOME_WORDS[value] })),
        fields,
      )}
    </fieldset>
  `

function groupView({ title, fields, folded }: Group, shown: Shown, first: Html | null): Html {
  const inside = html`${fields.map((field) => askedView(field, shown))}${first}`
  const isBegun = fields.some(({ name }) => shown.typed[name] || shown.faults[name] || shown.onRecord?.[name])
  return folded
    ? html`
      <details class="group folded" ${flag('open', isBegun)}>
        <summary>${title}</summary>
        ${inside}
      </details>
    `
    : html`
      <fieldset class="group">
        <legend><h2>${title}</h2></legend>
        ${inside}
      </fieldset>
    `
}

/** What the record calls a bed may prove to be trenches. */
const kindField = (onRecord: string, fields: Shown): Html =>
  html`
    <div class="ask kind">
      ${label({ name: 'kind', label: 'If it is something else' })}
      ${select(
        'kind',
        [
          { value: '', says: headed(onRecord) },
          ...COMPONENT_KINDS.filter((kind) => kind !== onRecord).map((value) => ({
            value,
            says: headed(value),
          })),
        ],
        fields,
      )}
      <noscript>
        <p class="soft">Press Next, then come back for the questions about that type.</p>
      </noscript>
    </div>
  `

/** Whatever was noted of it and is not usually asked of its kind still shows, so that nothing is sent unseen. */
function alsoNoted({ typed }: Shown, kind: PartStep['part']['kind']): readonly Group[] {
  const asked = new Set(groupsFor(kind).flatMap(({ fields }) => fields.map((field) => field.name)))
  const said = filled(typed)
  const fields = Object.keys(said)
    .filter((name) => isInGroups(name) && !asked.has(name))
    .map((name) => formField('component', name, kind))
  return fields.length === 0 ? [] : [{ title: 'Also noted', fields }]
}

const search = (fields: Shown): Html =>
  html`
    <fieldset class="ask choices when-not-found">
      <legend>How was it searched for?</legend>
      ${faultOf('searchedBy', fields)}
      ${ticks(
        'searchedBy',
        SEARCH_METHODS.map((value) => ({ value, says: SEARCH_WORDS[value] })),
        fields,
      )}
      ${fieldView(formField('component', 'searchedWithin'), fields)}
    </fieldset>
  `

const notReached = (fields: Shown): Html =>
  html`
    <fieldset class="ask choices when-not-reached">
      <legend>Why was it not reached?</legend>
      ${faultOf('notReachedBecause', fields)}
      ${choices(
        'notReachedBecause',
        NOT_REACHED_REASONS.map((value) => ({ value, says: NOT_REACHED_WORDS[value] })),
        fields,
      )}
    </fieldset>
  `
