import { type Html, html } from '../../html.ts'
import { verdictSign } from '../../parts/verdict.ts'
import type { Line } from './line.ts'
import type { Comparison, Group } from './present.ts'
import { proof, type Sources } from './proof-view.ts'
import type { Side } from './side.ts'

type Options = {
  readonly sources: Sources
  /** What belongs under a line that raises a discrepancy, by the discrepancy's key. */
  readonly under: (key: string) => Html | null
}

/** Record and found, part by part and line by line; each line opens to what it rests on. */
export const comparison = ({ groups, former, advice }: Comparison, options: Options): Html =>
  html`
    ${groups.map((group) => part(group, options))}
    ${
      former.length > 0 &&
      html`
        <section class="part">
          <h3>No longer in service</h3>
          <ul>${former.map(({ label, says }) => html`<li>${label}: ${says}</li>`)}</ul>
        </section>
      `
    }
    ${
      advice.length > 0 &&
      html`
        <section class="part">
          <h3>Advice</h3>
          <p class="soft">These would help. They are not required.</p>
          <ul>${advice.map((says) => html`<li>${says}</li>`)}</ul>
        </section>
      `
    }
  `

const part = ({ title, about, lines }: Group, options: Options): Html =>
  html`
    <section class="part">
      <h3>${title}</h3>
      <p class="soft">${about}</p>
      <div class="sides" aria-hidden="true">
        <span class="rec">On record</span><span class="fnd">Found</span>
      </div>
      ${lines.map((it) => line(it, options))}
    </section>
  `

function line(it: Line, { sources, under }: Options): Html {
  const inside = row(it)
  const kind = it.record ? 'two' : 'one'
  const because = it.because && html`<span class="because">${it.because}</span>`
  const opened = proof(it, sources)
  const shown = opened
    ? html`<details class="line ${kind}"><summary>${inside}${because}</summary>${opened}</details>`
    : html`<div class="line ${kind}"><div class="row">${inside}${because}</div></div>`
  return html`${shown}${it.raises !== null && under(it.raises)}`
}

const row = ({ what, record, found, verdict }: Line): Html =>
  record && found
    ? html`
      <span class="what">${what}</span>${side('rec', 'On record', record)}${verdictSign(verdict)}
      ${side('fnd', 'Found', found)}
    `
    : html`<span class="what">${what}</span>${verdictSign(verdict)}`

const side = (name: 'rec' | 'fnd', word: string, { text, state }: Side): Html =>
  html`
    <span class="${name} ${state}">
      ${text !== '' && html`<span class="vh">${word}: </span>${text}`}
    </span>
  `
