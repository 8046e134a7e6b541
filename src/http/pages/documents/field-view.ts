import { flag, type Html, html } from '../html.ts'
import { scanCut } from '../parts/scan.ts'
import { seenName } from './fields.ts'
import type { FieldShown, Place } from './present.ts'
import type { Pictures } from './scan-view.ts'
import { SURENESS_WORDS } from './sureness.ts'

const boxOf = ({ box: { x, y, w, h } }: Place): string => [x, y, w, h].join(' ')

const idOf = (name: string): string => `f${name.replace(/[^A-Za-z0-9]+/g, '-')}`

/**
 * One value: its label, how confident the reading is, the value to correct, any doubt, and its piece of the scan,
 * which the style sheet shows while the focus is here.
 */
export function fieldView(it: FieldShown, pictures: Pictures): Html {
  const { name, label, sureness, doubts, readings, fault, seen, place } = it
  const id = idOf(name)
  return html`
    <div class="field ${sureness}" data-of="${name}">
      <label for="${id}">${label}</label>
      <span class="how" id="${id}-how">${SURENESS_WORDS[sureness]}</span>
      ${fault !== undefined && html`<p class="fault" id="${id}-fault">${fault}</p>`}
      ${control(it, id)}
      ${
        doubts.length > 0 &&
        html`
          <p class="doubt" id="${id}-doubt">
            ${doubts.join('. ')}
            ${readings.length > 0 && html` <b>It could be ${readings.join(' or ')}.</b>`}
          </p>
        `
      }
      ${
        sureness === 'check' &&
        html`
          <label class="seen">
            <input type="checkbox" name="${seenName(name)}" ${flag('checked', seen)}> <span>
              <span class="vh">${label}: </span>checked against the scan
            </span>
          </label>
        `
      }
      ${place && html`<div class="cut">${scanCut(pictures.of(place.page), place.box, place.words)}</div>`}
    </div>
  `
}

function control(it: FieldShown, id: string): Html {
  const { name, value, input, choices = [], fault, doubts, readings, place, first, sureness } = it
  const described = [`${id}-how`, fault !== undefined && `${id}-fault`, doubts.length > 0 && `${id}-doubt`]
  const common = html`
    id="${id}" name="${name}" aria-describedby="${described.filter(Boolean).join(' ')}"
    ${fault !== undefined && html` aria-invalid="true"`} ${flag('autofocus', first)}
    ${place && html` data-page="${place.page}" data-box="${boxOf(place)}"`}
    ${sureness === 'check' && html` data-check="yes"`}
  `
  if (input === 'choice') {
    const known = value === '' || choices.includes(value)
    return html`
      <select ${common}>
        <option value="">not stated</option>
        ${!known && html`<option selected>${value}</option>`}
        ${choices.map(
          (choice) =>
            html`
              <option value="${choice}" ${flag('selected', choice === value)}>
                ${choice.replaceAll('-', ' ')}
              </option>
            `,
        )}
      </select>
    `
  }
  if (input === 'prose') return html`<textarea ${common} rows="2">${value}</textarea>`
  const list = readings.length > 0 ? `${id}-list` : null
  return html`
    <input
      ${common} value="${value}" autocomplete="off" spellcheck="false"
      ${input === 'number' && html`inputmode="decimal"`} ${list !== null && html`list="${list}"`}
    >
    ${
      list !== null &&
      html`
        <datalist id="${list}">
          ${readings.map((reading) => html`<option value="${reading}"></option>`)}
        </datalist>
      `
    }
  `
}
