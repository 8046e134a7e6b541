import { flag, type Html, html } from '../html.ts'
import { documentPath } from './addresses.ts'
import { fieldView } from './field-view.ts'
import { leftOut } from './fields.ts'
import type { FieldShown, FormShown, PartShown } from './present.ts'
import type { Pictures } from './scan-view.ts'

/** The fields of one permit. The button that Enter presses comes first. */
export function formView(county: string, id: string, form: FormShown, pictures: Pictures): Html {
  const { permit, version, fields, others, parts, parcelAddress, formFault, notice, isReady } = form
  return html`
    <form class="values" method="post" action="${documentPath(county, id)}/transcription" novalidate>
      ${notice !== null && html`<p class="notice bad" role="alert">${notice}</p>`}
      ${differences(form)}
      ${formFault !== undefined && html`<p class="fault">${formFault}</p>`}
      <input type="hidden" name="version" value="${version}">
      <input type="hidden" name="permit" value="${permit}">
      <input type="hidden" name="parts" value="${parts.length}">
      <fieldset>
        <legend>The permit</legend>
        ${parcelAddress !== null && html`<p class="soft">Address on the document: ${parcelAddress}</p>`}
        ${group(fields, others, pictures)}
      </fieldset>
      ${parts.map((part) => partView(part, pictures))}
      <p class="acts">
        <button name="act" value="confirm" ${flag('autofocus', isReady)}>Confirm and go to next</button> <button
          class="second" name="act" value="part"
        >
          Add a component
        </button>
      </p>
    </form>
  `
}

const group = (fields: readonly FieldShown[], others: readonly FieldShown[], pictures: Pictures): Html =>
  html`
    <div class="grid">${fields.map((it) => fieldView(it, pictures))}</div>
    ${
      others.length > 0 &&
      html`
        <details class="others">
          <summary>${others.length} more fields</summary>
          <div class="grid">${others.map((it) => fieldView(it, pictures))}</div>
        </details>
      `
    }
  `

const partView = ({ index, title, isOut, fields, others }: PartShown, pictures: Pictures): Html =>
  html`
    <fieldset>
      <legend>${title}</legend>
      ${group(fields, others, pictures)}
      <label class="seen">
        <input type="checkbox" name="${leftOut(index)}" ${flag('checked', isOut)}> Leave out “${title}”:
        it is not on the document
      </label>
    </fieldset>
  `

const differences = ({ differences: list }: FormShown): Html | null =>
  list.length === 0
    ? null
    : html`
      <div class="scroll">
        <table>
          <caption>Your values and the values now</caption>
          <thead>
            <tr>
              <th scope="col">Value</th>
              <th scope="col">Yours (kept below)</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            ${list.map(
              ({ what, yours, stands }) =>
                html`
                  <tr>
                    <th scope="row">${what}</th>
                    <td>${yours || 'nothing'}</td>
                    <td>${stands || 'nothing'}</td>
                  </tr>
                `,
            )}
          </tbody>
        </table>
      </div>
    `
