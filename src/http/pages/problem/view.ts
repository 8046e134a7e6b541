import { faultInWords } from '../../../words/field-fault.ts'
import type { Problem } from '../../problem.ts'
import { type Html, html } from '../html.ts'
import { problemWords } from './present.ts'

/** A failure in plain words. What an operation says about the case comes before the general advice. */
export function problemPage(
  { kind, detail, errors }: Problem,
  requestId: string,
): { title: string; body: Html } {
  const { title, says, advice } = problemWords(kind)
  const body = html`
    <h1>${title}</h1>
    <p class="lead">${SHOWN.has(kind) && detail ? detail : says}</p>
    ${
      errors &&
      html`
        <ul>
          ${errors.map(({ pointer, message }) => html`<li>${faultInWords(pointer, message)}</li>`)}
        </ul>
      `
    }
    <p>${advice}</p>
    <p><a href="/">Home</a></p>
    ${NUMBERED.has(kind) && html`<p class="soft">Request number: <code>${requestId}</code></p>`}
  `
  return { title, body }
}

/** Whose detail is written for people; the others are for programs. */
const SHOWN: ReadonlySet<string> = new Set(['conflict', 'not-found', 'not-allowed'])
const NUMBERED: ReadonlySet<string> = new Set(['internal', 'unavailable'])
