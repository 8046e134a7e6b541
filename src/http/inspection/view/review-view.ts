import { OUTCOME_WORDS } from '../../../words/field-choices.ts'
import { formFaultWords } from '../../../words/form-faults.ts'
import { type Html, html } from '../../pages/html.ts'
import { inspectionPath } from '../addresses.ts'
import { outcomeOf, type PartStep, stepsOf } from '../sheet/steps.ts'
import { faultOf, type Shown } from './field.ts'
import { stepForm, stepHead } from './frame.ts'
import { differencesView } from './live-view.ts'
import type { InspectionShown } from './shown.ts'

/** The look back over the whole inspection, and the one place from which it is submitted. */
export function reviewView(shown: InspectionShown): Html {
  const { sheet, form, faults, differences, holds, photos } = shown
  const steps = stepsOf(sheet, form)
  const parts = steps.filter((step): step is PartStep => step.is === 'part')
  const open = parts.filter((step) => outcomeOf(step) === null)
  const fix = steps.filter(({ name }) => faults[name] !== undefined && name !== 'review')
  const path = (name: string): string => inspectionPath(sheet.county, sheet.parcel.number, name)
  const fields: Shown = { typed: { notes: form.notes }, faults: faults.review ?? {} }
  const row = (step: PartStep): Html => {
    const outcome = outcomeOf(step)
    const shots = photos.filter(({ component }) => component === step.part.label).length
    return html`
      <li>
        <a href="${path(step.name)}" data-step="${step.name}">
          ${step.title}
        </a> <span>
          ${outcome ? OUTCOME_WORDS[outcome as keyof typeof OUTCOME_WORDS] : 'not answered'}
          ${holds[step.name] && html`, holds <b>${holds[step.name]}</b>`}
          ${shots > 0 && html`, ${shots} photo${shots > 1 && 's'}`}
        </span>
      </li>
    `
  }
  const content = html`
    ${
      fix.length > 0 &&
      html`
        <div class="notice bad">
          <p><b>Fix before you submit:</b></p>
          <ul>
            ${fix.map(
              ({ name, title }) =>
                html`
                <li>
                  <a href="${path(name)}" data-step="${name}">${title}</a>
                  : ${Object.values(faults[name] ?? {})
                    .map(formFaultWords)
                    .join('; ')}
                </li>
              `,
            )}
          </ul>
        </div>
      `
    }
    <ul class="answers">${parts.map(row)}</ul>
    ${
      open.length > 0 &&
      html`
        <p class="notice">
          ${open.length === 1 ? 'One thing is' : `${open.length} things are`} not answered. Not answered counts as not inspected.
        </p>
      `
    }
    <section aria-labelledby="all-title">
      <h2 id="all-title">What differs from the record</h2>
      <div id="live" aria-live="polite">
        ${
          differences.length === 0
            ? html`<p class="soft">No differences found so far.</p>`
            : differencesView(differences)
        }
      </div>
    </section>
    <div class="ask wide">
      <label for="f-notes">Notes on the whole inspection</label>
      ${faultOf('notes', fields)}
      <textarea id="f-notes" name="notes" rows="4">${form.notes}</textarea>
    </div>
    <p>
      The county sees what you submit, and it can’t be changed afterward. You can amend it: the
      amendment takes its place.
    </p>
  `
  return html`
    ${stepHead(shown, 'Review and submit')}
    ${stepForm(shown, content, { back: true, next: 'Submit' })}
  `
}
