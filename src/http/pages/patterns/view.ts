import { type Html, html } from '../html.ts'
import { glancePath } from '../layout/addresses.ts'
import type { Reading } from './chance.ts'
import type { GroupLine, PatternsPage, PatternTable } from './present.ts'

type County = { readonly id: string; readonly name: string }

export const patternsView = ({ id, name }: County, { tables, cautions }: PatternsPage): Html =>
  html`<p class="crumb"><a href="${glancePath(id)}">County at a glance</a></p><h1>Patterns across ${name}</h1>${
    tables.length === 0
      ? html`<p class="lead">Nothing to compare yet: no inspection has been handed in and no paper has been confirmed. Patterns come with them.</p>`
      : html`<p class="lead">Where differences gather. Each group is held against all the others together. What stands out is a reason to look, and no finding about anybody.</p>${tables.map(table)}${howToRead(cautions)}`
  }`

const table = ({ title, asks, counts, group, rows, leftOut, links }: PatternTable): Html =>
  html`<section><h2>${title}</h2><p>${asks} <span class="soft">${counts}</span></p>${
    rows.length === 0
      ? html`<p>No group is large enough to say anything of it.${leftOut !== null && ` ${leftOut}`}</p>`
      : html`<div class="scroll" tabindex="0" role="group" aria-label="${title}, table"><table><caption class="vh">${title}</caption><thead><tr><th scope="col">${group}</th><th scope="col" class="figure">Hits here</th><th scope="col" class="figure">All others</th><th scope="col" class="figure">Probability</th><th scope="col">With all groups looked at</th></tr></thead><tbody>${rows.map(line)}</tbody></table></div><p class="soft">${leftOut !== null && `${leftOut} `}Small numbers: one parcel or value more or less moves a share a long way. A reason to look, no finding.</p>`
  }<ul class="plain">${links.map(
    ({ to, words }) => html`<li><a href="${to}">${words}</a></li>`,
  )}</ul></section>`

const line = ({ name, to, here, elsewhere, probability, often, reading }: GroupLine): Html =>
  html`<tr><th scope="row">${to === null ? name : html`<a href="${to}">${name}</a>`}</th><td class="figure">${here}</td><td class="figure">${elsewhere}</td><td class="figure">${probability}</td><td>${reading === 'nothing-to-compare' ? 'Nothing to hold it against.' : html`${STANDS_OUT[reading]}Chance alone: ${often}.`}</td></tr>`

const STANDS_OUT: { readonly [R in Exclude<Reading, 'nothing-to-compare'>]: Html | null } = {
  'chance-can': null,
  more: html`<b>More than elsewhere; worth a look.</b> `,
  fewer: html`<b>Fewer than elsewhere; worth a look.</b> `,
}

const howToRead = (cautions: readonly string[]): Html =>
  html`<section><h2>How to read it</h2><ul><li><b>Probability</b>: were there no difference between this group and the others, how often would counts lie as far apart as these, or further? By Fisher’s exact test, two-sided; 0.05 is one time in twenty.</li><li><b>With all groups looked at</b>: who looks at forty streets finds two that stand out so by chance. The probability is raised for the number of groups in the table (Holm’s method) and told as how often. “Worth a look” is said under one time in twenty, which is common practice and no rule.</li>${cautions.map(
    (caution) => html`<li>${caution}</li>`,
  )}</ul></section>`
