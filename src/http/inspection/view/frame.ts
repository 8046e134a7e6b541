import { OUTCOME_WORDS } from '../../../words/field-choices.ts'
import { type Html, html } from '../../pages/html.ts'
import { inspectionPath, numberShown } from '../addresses.ts'
import type { Live } from '../live/live.ts'
import { outcomeOf, type Step, stepsOf } from '../sheet/steps.ts'
import type { InspectionShown } from './shown.ts'

/** The head of a step: what it is, where one is on the walk, and where the inspection is kept. */
export function stepHead({ sheet, form, step, kept, notice, faults }: InspectionShown, title: string): Html {
  const steps = stepsOf(sheet, form)
  const at = steps.findIndex(({ name }) => name === step)
  const { county, parcel } = sheet
  return html`
    <h1 id="title" tabindex="-1">
      <span class="number">${numberShown(parcel)} ${parcel.address}</span>
      ${title}
    </h1>
    <p class="kept" id="kept" role="status">${kept}</p>
    <details class="walk">
      <summary>Step ${at + 1} of ${steps.length}</summary>
      <ol>
        ${steps.map(
          (it) =>
            html`
            <li>
              <a
                href="${inspectionPath(county, parcel.number, it.name)}"
                data-step="${it.name}"${it.name === step && html` aria-current="step"`}
              >
                ${it.title}
              </a> ${standing(it, faults[it.name] !== undefined)}
            </li>
          `,
        )}
      </ol>
    </details>
    ${notice && html`<p class="notice" role="alert">${notice}</p>`}
  `
}

function standing(step: Step, faulty: boolean): Html | null {
  if (faulty) return html`<span class="fault">needs correction</span>`
  if (step.is !== 'part') return null
  const outcome = outcomeOf(step)
  return html`
    <span class="soft">
      ${outcome ? OUTCOME_WORDS[outcome as keyof typeof OUTCOME_WORDS] : 'not answered'}
    </span>
  `
}

/** The size and how many differences, in the bar: they are seen while the numbers go in, and lead to the rest. */
export const sumView = ({ holds, differences, again }: Live): Html | null => {
  const count = differences.length
  const says = again
    ? 'too rough to tell'
    : count === 0
      ? null
      : `${count} difference${count === 1 ? '' : 's'}`
  return holds || says ? html`${holds && html`<b>${holds}</b> `}${says && html`<span>${says}</span>`}` : null
}

type Bar = { readonly back: boolean; readonly next: string }

/**
 * A step's form. The button that Enter presses stands first and is not seen; the bar with the visible ones stays within
 * reach of the thumb.
 */
export const stepForm = (
  { sheet, step, draft, live, differences }: InspectionShown,
  content: Html,
  { back, next }: Bar,
): Html =>
  html`
    <form
      class="step"
      method="post"
      action="${inspectionPath(sheet.county, sheet.parcel.number)}"
      novalidate
      data-step="${step}"
    >
      <button class="vh" name="to" value="next" tabindex="-1" aria-hidden="true">${next}</button>
      <input type="hidden" name="step" value="${step}">
      ${
        draft &&
        html`
          <input type="hidden" name="draft" value="${draft.id}">
          <input type="hidden" name="revision" value="${draft.revision}">
        `
      }
      ${content}
      <div class="bar">
        ${back && html`<button class="quiet" name="to" value="back">Back</button>`}
        <a class="sum" id="sum" href="#live-title">
          ${live && sumView(step === 'review' ? { ...live, differences } : live)}
        </a>
        <button name="to" value="next">${next}</button>
      </div>
    </form>
  `
