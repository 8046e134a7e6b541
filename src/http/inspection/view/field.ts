import type { Method } from '../../../measure/methods.ts'
import { METHOD_WORDS } from '../../../words/field-choices.ts'
import { confirmWords, type FormFault, formFaultWords } from '../../../words/form-faults.ts'
import { flag, type Html, html } from '../../pages/html.ts'
import type { Choice, FormField } from '../form/fields.ts'
import { isConfirmed, type Typed } from '../form/typed.ts'

/** What a field is shown with: what was typed, what is wrong with it, what the record says of the same thing. */
export type Shown = {
  readonly typed: Typed
  readonly faults: { readonly [field: string]: FormFault }
  readonly onRecord?: { readonly [field: string]: string }
}

export const idOf = (name: string): string => `f-${name.replaceAll('.', '-')}`

/** Room for a fault beside every field, so that one can appear as it is typed without anything else moving. */
export function faultOf(name: string, { faults }: Shown): Html {
  const fault = faults[name]
  return html`
    <p class="fault" id="${idOf(name)}-fault" ${!fault && html`hidden`}>
      ${fault && formFaultWords(fault)}
    </p>
  `
}

/** The box that says an odd value is meant: it shows beside the question, and for as long as its tick holds. */
export function meantOf(name: string, { typed, faults }: Shown): Html {
  const fault = faults[name]
  const confirmed = isConfirmed(typed, name)
  const written = fault?.why === 'unusual' ? fault.written : confirmed ? typed[name]! : null
  return html`
    <label class="tick meant" id="${idOf(name)}-meant" ${written === null && html`hidden`}>
      <input type="checkbox" name="${name}.checked" value="${written}" ${flag('checked', confirmed)}>
      <span>${written !== null && confirmWords(written)}</span>
    </label>
  `
}

export const describes = (name: string, { faults }: Shown): Html | null =>
  faults[name] === undefined ? null : html` aria-invalid="true" aria-describedby="${idOf(name)}-fault"`

const recorded = (name: string, { onRecord }: Shown): Html | null =>
  onRecord?.[name] ? html`<p class="rec"><span class="soft">on record</span> ${onRecord[name]}</p>` : null

/** A choice among few, or one of what is seen on the spot, is a row of buttons; a longer one is a list. */
const MOST_BUTTONS = 4
const isButtons = ({ field, choices: all }: FormField): boolean =>
  field.value === 'flag' ||
  (field.value === 'choice' && (field.section === 'state' || all.length <= MOST_BUTTONS))

export function fieldView(asked: FormField, shown: Shown): Html {
  const { name, label: says, field, ways: usual } = asked
  if (isButtons(asked))
    return html`
      <fieldset class="ask choices">
        <legend>${says}</legend>
        ${recorded(name, shown)}
        ${faultOf(name, shown)}
        ${choices(name, asked.choices, shown, true)}
      </fieldset>
    `
  switch (field.value) {
    case 'length':
      return html`
        <div class="ask len for-${name}">
          ${label(asked)}
          ${recorded(name, shown)}
          ${faultOf(name, shown)}
          ${meantOf(name, shown)}
          <div class="pair">${lengthInput(name, shown)}${ways(asked, usual, shown)}</div>
        </div>
      `
    case 'level':
      return html`
        <div class="ask len level">
          <fieldset class="choices">
            <legend>${says} ${asked.hint}</legend>
            ${choices(`${name}.side`, LEVELS, shown)}
          </fieldset>
          ${faultOf(name, shown)}
          ${meantOf(name, shown)}
          <div class="pair">
            <label class="vh" for="${idOf(name)}">How far above or below</label>
            ${lengthInput(name, shown)}
            ${ways(asked, usual, shown)}
          </div>
        </div>
      `
    case 'choice':
      return html`
        <div class="ask">
          ${label(asked)}
          ${recorded(name, shown)}
          ${faultOf(name, shown)}
          ${select(name, [{ value: '', says: 'Not stated' }, ...asked.choices], shown)}
        </div>
      `
    case 'prose':
      return html`
        <div class="ask for-${name}">
          ${label(asked)}
          ${faultOf(name, shown)}
          <textarea id="${idOf(name)}" name="${name}" rows="3"${describes(name, shown)}>
            ${shown.typed[name]}
          </textarea>
        </div>
      `
    case 'date':
      return html`
        <div class="ask">
          ${label(asked)}
          ${recorded(name, shown)}
          ${faultOf(name, shown)}
          <input
            type="date"
            id="${idOf(name)}"
            name="${name}"
            value="${shown.typed[name]}"${describes(name, shown)}
          >
        </div>
      `
    default:
      return html`
        <div class="ask">
          ${label(asked)}
          ${recorded(name, shown)}
          ${faultOf(name, shown)}
          ${CAN_BE_ODD.includes(field.value) && meantOf(name, shown)}
          ${textInput(name, MODES[field.value] ?? 'text', shown)}
        </div>
      `
  }
}

/** What may stand beyond what is usual, besides lengths. */
const CAN_BE_ODD: readonly string[] = ['volume', 'whole', 'number']
const MODES: { readonly [value: string]: 'numeric' | 'decimal' } = { whole: 'numeric', number: 'decimal' }

const LEVELS: readonly Choice[] = [
  { value: 'at', says: 'At it' },
  { value: 'above', says: 'Above' },
  { value: 'below', says: 'Below' },
]

export const label = ({ name, label: says, hint }: Pick<FormField, 'name' | 'label' | 'hint'>): Html =>
  html`<label for="${idOf(name)}">${says}${hint && html` <span class="soft">${hint}</span>`}</label>`

/** The placeholder is a space: the sheet tells by it whether the field is empty. */
export const textInput = (name: string, mode: 'text' | 'numeric' | 'decimal', shown: Shown): Html =>
  html`
    <input
      id="${idOf(name)}"
      name="${name}"
      inputmode="${mode}"
      value="${shown.typed[name]}"
      placeholder=" "
      autocomplete="off"
      maxlength="80"${describes(name, shown)}
    >
  `

export const lengthInput = (name: string, shown: Shown): Html =>
  html`
    <input
      class="length"
      id="${idOf(name)}"
      name="${name}"
      value="${shown.typed[name]}"
      placeholder=" "
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      maxlength="60"${describes(name, shown)}
    >
  `

/** How it was taken: the ways that are usual for it, and the one that was chosen wherever it comes from. */
function ways({ name, label: says }: FormField, usual: readonly Method[], { typed }: Shown): Html {
  const chosen = typed[`${name}.how`]
  const all = [...new Set([...usual, ...(chosen ? [chosen as Method] : [])])]
  return html`
    <select name="${name}.how" aria-label="${says}: how it was taken">
      ${all.map(
        (way) => html`
          <option value="${way}" ${flag('selected', way === chosen)}>${METHOD_WORDS[way]}</option>
        `,
      )}
    </select>
    ${typed[`${name}.by`] && html`<input type="hidden" name="${name}.by" value="${typed[`${name}.by`]}">`}
  `
}

/** `undo` adds a way back to having said nothing; the sheet shows it only where something was. */
export function choices(name: string, list: readonly Choice[], { typed }: Shown, undo = false): Html {
  const all = undo ? [...list, { value: '', says: 'Not stated' }] : list
  return html`
    <div class="big">
      ${all.map(
        ({ value, says }) =>
          html`
          <label${value === '' && html` class="undo"`}>
            <input
              type="radio"
              name="${name}"
              value="${value}"
              ${flag('checked', (typed[name] ?? (undo ? '' : null)) === value)}
            >
            <span>${says}</span>
          </label>
        `,
      )}
    </div>
  `
}

export const ticks = (name: string, list: readonly Choice[], { typed }: Shown): Html =>
  html`
    <div class="big">
      ${list.map(
        ({ value, says }) =>
          html`
          <label>
            <input
              type="checkbox"
              name="${name}.${value}"
              value="on"
              ${flag('checked', typed[`${name}.${value}`] === 'on')}
            >
            <span>${says}</span>
          </label>
        `,
      )}
    </div>
  `

export const select = (name: string, list: readonly Choice[], shown: Shown): Html =>
  html`
    <select id="${idOf(name)}" name="${name}"${describes(name, shown)}>
      ${list.map(
        ({ value, says }) =>
          html`
          <option value="${value}" ${flag('selected', value === (shown.typed[name] ?? ''))}>
            ${says}
          </option>
        `,
      )}
    </select>
  `
