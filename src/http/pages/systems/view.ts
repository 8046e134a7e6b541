import { SYSTEM_USES } from '../../../catalog/choices.ts'
import { isShared, type System } from '../../../records/system.ts'
import type { Parcel } from '../../../store/parcels.ts'
import type { SystemChange } from '../../../store/systems.ts'
import { SYSTEM_USE_WORDS, systemName, systemReach } from '../../../words/system.ts'
import { flag, type Html, html } from '../html.ts'
import { parcelPath, systemsPath } from '../layout/addresses.ts'
import { dayAt } from '../words/dates.ts'
import { type FormReturned, formOf, type TypedSystem } from './read-form.ts'

type Shown = {
  readonly county: string
  readonly parcel: Parcel
  readonly systems: readonly System[]
  readonly histories: ReadonlyMap<string, readonly SystemChange[]>
  readonly names: ReadonlyMap<string, string>
  readonly returned: FormReturned | null
}

/** Each system with its form and its history, and a form for another one. */
export function systemsView(shown: Shown): Html {
  const { county, parcel, systems, returned } = shown
  const path = systemsPath(county, parcel.number)
  const form = (system: System | null) => {
    const own = returned?.typed.id === (system?.id ?? '') ? returned : null
    return systemForm(path, own?.typed ?? formOf(system, parcel.number), own?.faults ?? [])
  }
  return html`
    <h1><span class="number">${parcel.number}</span> Septic systems</h1>
    <p>
      A parcel has one system until you say otherwise. Say here that there is another, that one serves
      several parcels, or that it lies on another lot. Each system is then compared and inspected by itself.
    </p>
    <p><a href="${parcelPath(county, parcel.number)}">Back to the file</a></p>
    ${systems.map(
      (it) => html`
        <section>
          <h2>${sentenceCase(systemName(it, systems))}</h2> <p>${systemReach(it)}</p>
          ${
            isShared(it) &&
            html`
              <p class="soft">
                Whether an easement or agreement exists is a matter for title work. The county does not
                settle it here.
              </p>
            `
          }
          <details class="decide" ${flag('open', returned?.typed.id === it.id)}>
            <summary class="button">Change</summary>
            ${form(it)}
          </details>
          ${history(shown.histories.get(it.id) ?? [], shown.names)}
        </section>
      `,
    )}
    <section>
      <h2>Another system</h2>
      <details class="decide" ${flag('open', returned?.typed.id === '')}>
        <summary class="button">Add a system</summary>
        ${form(null)}
      </details>
    </section>
  `
}

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const said = (it: SystemChange): string =>
  `${it.label ?? SYSTEM_USE_WORDS[it.use]}. ${systemReach(it)} ${it.reason}`

const history = (changes: readonly SystemChange[], names: ReadonlyMap<string, string>): Html | false =>
  changes.length > 0 &&
  html`
    <ul class="soft">
      ${changes.map(
        (it) => html`
          <li>
            ${dayAt(it.changedAt)}, ${names.get(it.changedBy) ?? 'a reviewer'}: ${said(it)}
          </li>
        `,
      )}
    </ul>
  `

function systemForm(path: string, typed: TypedSystem, faults: readonly string[]): Html {
  const at = (name: string): string => `${name}-${typed.id === '' ? 'new' : typed.id}`
  return html`
    <form method="post" action="${path}" novalidate>
      ${
        faults.length > 0 &&
        html`
          <div class="notice bad" role="alert">
            <p>Nothing is saved yet. What you typed is still there.</p>
            <ul>${faults.map((it) => html`<li>${it}</li>`)}</ul>
          </div>
        `
      }
      <input type="hidden" name="id" value="${typed.id}">
      <input type="hidden" name="revision" value="${typed.revision}">
      <div class="fields">
        <div>
          <label for="${at('use')}">What it serves <span class="soft">agents and owners read this</span></label>
          <select id="${at('use')}" name="use">
            ${SYSTEM_USES.map(
              (use) => html`
                <option value="${use}" ${flag('selected', typed.use === use)}>${SYSTEM_USE_WORDS[use]}</option>
              `,
            )}
          </select>
        </div>
        <div>
          <label for="${at('label')}">Label <span class="soft">for the county and firms</span></label>
          <input id="${at('label')}" name="label" value="${typed.label}" maxlength="60">
        </div>
      </div>
      ${typed.parcels.map((it, row) => parcelRow(at, it, row))}
      <label for="${at('reason')}">How this is known</label>
      <textarea id="${at('reason')}" name="reason" rows="2" maxlength="500" required>${typed.reason}</textarea>
      <p><button>${typed.id === '' ? 'Add this system' : 'Save'}</button></p>
    </form>
  `
}

const parcelRow = (
  at: (name: string) => string,
  it: TypedSystem['parcels'][number],
  row: number,
): Html => html`
  <fieldset>
    <legend>${it.parcel === '' ? 'One more parcel' : it.parcel}</legend>
    <div class="fields">
      ${text(at, `parcel-${row}`, 'Parcel number', it.parcel)}
      ${text(at, `bedrooms-${row}`, 'Bedrooms, if shared and no permit says', it.bedrooms)}
      ${text(at, `flow-${row}`, 'Design flow, gpd', it.designFlowGpd)}
    </div>
    ${tick(`serves-${row}`, 'It serves this parcel', it.serves)}
    ${tick(`lies-on-${row}`, 'It lies on this parcel, all of it or a part', it.liesOn)}
  </fieldset>
`

const tick = (name: string, says: string, on: boolean): Html => html`
  <label class="choice">
    <input type="checkbox" name="${name}" value="yes" ${flag('checked', on)}> <span>${says}</span>
  </label>
`

const text = (at: (name: string) => string, name: string, label: string, value: string): Html => html`
  <div>
    <label for="${at(name)}">${label}</label>
    <input id="${at(name)}" name="${name}" value="${value}" maxlength="80">
  </div>
`
