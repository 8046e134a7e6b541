import { DECISION_WORDS } from '../../../words/decisions.ts'
import { flag, type Html, html } from '../html.ts'
import { decisionsPath } from '../layout/addresses.ts'
import type { Choice, DecideForm } from './decide-form.ts'

/**
 * The form under a difference. The style sheet shows the fields that an action needs. Without it all are there,
 * and those of other actions are ignored.
 */
export function decideForm(county: string, form: DecideForm, open: boolean): Html {
  const { discrepancy, version, supersedes, faults, notice } = form
  const title = supersedes ? 'Replace this decision' : 'Decide'
  const summary = html`<summary class="button">${title}</summary>`
  return html`
    <details class="decide" ${flag('open', open)}>
      ${summary}
      <form method="post" action="${decisionsPath(county, discrepancy)}" novalidate>
        ${notice && html`<p class="notice" role="alert">${notice}</p>`}
        ${fault('form', discrepancy, faults.form)}
        <input type="hidden" name="version" value="${version}">
        ${supersedes && html`<input type="hidden" name="supersedes" value="${supersedes}">`}
        ${actions(form)}${correction(form)}${asks(form)}${reason(form)}
        <p>
          <button>${supersedes ? 'Replace the decision' : 'Decide'}</button> <span class="soft">
            ${
              supersedes
                ? 'The earlier decision stays in the history.'
                : 'A decision is never deleted. You can replace it later.'
            }
          </span>
        </p>
      </form>
    </details>
  `
}

function actions({ discrepancy, actions: offered, typed, faults }: DecideForm): Html {
  return html`
    <fieldset${described('action', discrepancy, faults.action)}>
      <legend>Decision</legend>
      ${fault('action', discrepancy, faults.action)}
      ${offered.map(
        (action) =>
          html`
            <label class="choice">
              <input
                type="radio" name="action" value="${action}" ${flag('checked', typed.action === action)}
              >
              <span>
                <b>${DECISION_WORDS[action].choice}</b> <span class="soft">
                  ${DECISION_WORDS[action].follows}
                </span>
              </span>
            </label>
          `,
      )}
    </fieldset>
  `
}

function correction(form: DecideForm): Html {
  const { permits, components, fields } = form
  return html`
    <fieldset class="for-correction">
      <legend>Correction</legend>
      <div class="fields">
        ${select('permit', 'Permit', permits, form)}
        ${select('component', 'Component', components, form)}
        ${select('field', 'Value', [{ value: '', name: 'choose' }, ...fields], form)}
      </div>
      <div class="fields plain-value">
        ${text('value', 'The record should say', form, 'with a unit, for example 750 gal or 4\'-6"')}
      </div>
      <div class="fields tie-value">
        ${text('tieA', 'Tie from A', form)}${text('tieB', 'Tie from B', form)}
        ${select(
          'tieSide',
          'Side',
          [
            { value: '', name: 'not stated' },
            { value: 'away', name: 'away from the house' },
            { value: 'toward', name: 'on the house side' },
          ],
          form,
        )}
      </div>
    </fieldset>
  `
}

const asks = (form: DecideForm): Html =>
  html`
    <div class="for-asking">
      ${text('asks', 'What is required, in a few words (if the choice above does not say it)', form)}
    </div>
  `

const reason = ({ discrepancy, typed, faults }: DecideForm): Html =>
  html`
    <label for="reason-${discrepancy}">Reason</label>
    ${fault('reason', discrepancy, faults.reason)}
    <textarea
      id="reason-${discrepancy}" name="reason" rows="3" maxlength="4000"
      required${described('reason', discrepancy, faults.reason)}
    >
      ${typed.reason}
    </textarea>
  `

function text(name: string, label: string, { discrepancy, typed, faults }: DecideForm, hint?: string): Html {
  const id = `${name}-${discrepancy}`
  return html`
    <div>
      <label for="${id}">
        ${label}
        ${hint && html` <span class="soft">${hint}</span>`}
      </label>
      ${fault(name, discrepancy, faults[name])}
      <input
        id="${id}" name="${name}" value="${typed[name]}"
        maxlength="500"${described(name, discrepancy, faults[name])}
      >
    </div>
  `
}

function select(
  name: string,
  label: string,
  choices: readonly Choice[],
  { discrepancy, typed, faults }: DecideForm,
): Html {
  const id = `${name}-${discrepancy}`
  return html`
    <div>
      <label for="${id}">${label}</label>
      ${fault(name, discrepancy, faults[name])}
      <select id="${id}" name="${name}"${described(name, discrepancy, faults[name])}>
        ${choices.map(
          (choice) =>
            html`
              <option value="${choice.value}" ${flag('selected', choice.value === (typed[name] ?? ''))}>
                ${choice.name}
              </option>
            `,
        )}
      </select>
    </div>
  `
}

const fault = (name: string, discrepancy: string, says: string | undefined): Html | null =>
  says === undefined ? null : html`<p class="fault" id="fault-${name}-${discrepancy}">${says}</p>`

const described = (name: string, discrepancy: string, says: string | undefined): Html | null =>
  says === undefined ? null : html` aria-invalid="true" aria-describedby="fault-${name}-${discrepancy}"`
