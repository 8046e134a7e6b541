import type { Problem } from '../../problem.ts'
import { type Html, html } from '../html.ts'
import { problemWords } from './present.ts'

/** A failure in plain words. What an operation says of the case stands above the general advice. */
export function problemPage(
  { kind, detail, errors }: Problem,
  requestId: string,
): { title: string; body: Html } {
  const { title, says, advice } = problemWords(kind)
  const body = html`<h1>${title}</h1><p class="lead">${SHOWN.has(kind) && detail ? detail : says}</p>${
    errors &&
    html`<ul>${errors.map(({ pointer, message }) => html`<li><b>${pointer.slice(1).replaceAll('/', ', ')}</b>: ${message}</li>`)}</ul>`
  }<p>${advice}</p><p><a href="/">To the first page</a></p>${
    NUMBERED.has(kind) && html`<p class="soft">Number of this request: <code>${requestId}</code></p>`
  }`
  return { title, body }
}

/** Whose detail is written for people; the others' is for programs. */
const SHOWN: ReadonlySet<string> = new Set(['conflict', 'not-found', 'not-allowed'])
const NUMBERED: ReadonlySet<string> = new Set(['internal', 'unavailable'])
