import { type Html, html } from '../html.ts'
import { overviewPath } from '../layout/addresses.ts'
import type { Reading } from './chance.ts'
import type { GroupLine, PatternsPage, PatternTable } from './present.ts'

type County = { readonly id: string; readonly name: string }

export const patternsView = ({ id, name }: County, { tables, cautions }: PatternsPage): Html =>
  html`
    <p class="crumb"><a href="${overviewPath(id)}">County overview</a></p>
    <h1>Patterns across ${name}</h1>
    ${
      tables.length === 0
        ? html`
          <p class="lead">
            Nothing to compare yet. Patterns appear once inspections are submitted and documents are
            confirmed.
          </p>
        `
        : html`
          <p class="lead">
            Where differences are more common. Each group is compared with all the others together. A
            pattern is a reason to look. It proves nothing about anyone.
          </p>
          ${tables.map(table)}${howToRead(cautions)}
        `
    }
  `

const table = ({ title, asks, counts, group, rows, leftOut, links }: PatternTable): Html =>
  html`
    <section>
      <h2>${title}</h2>
      <p>${asks} <span class="soft">${counts}</span></p>
      ${
        rows.length === 0
          ? html`<p>No group is large enough to compare.${leftOut !== null && ` ${leftOut}`}</p>`
          : html`
            <div class="scroll" tabindex="0" role="group" aria-label="${title}, table">
              <table>
                <caption class="vh">${title}</caption>
                <thead>
                  <tr>
                    <th scope="col">${group}</th>
                    <th scope="col" class="figure">This group</th>
                    <th scope="col" class="figure">All others</th>
                    <th scope="col" class="figure">Probability</th>
                    <th scope="col">Allowing for all groups</th>
                  </tr>
                </thead>
                <tbody>${rows.map(line)}</tbody>
              </table>
            </div>
            <p class="soft">
              ${leftOut !== null && `${leftOut} `}The numbers are small: one parcel or value more or
              less changes a share a lot.
            </p>
          `
      }
      <ul class="plain">
        ${links.map(({ to, words }) => html`<li><a href="${to}">${words}</a></li>`)}
      </ul>
    </section>
  `

const line = ({ name, to, here, elsewhere, probability, often, reading }: GroupLine): Html =>
  html`
    <tr>
      <th scope="row">${to === null ? name : html`<a href="${to}">${name}</a>`}</th>
      <td class="figure">${here}</td>
      <td class="figure">${elsewhere}</td>
      <td class="figure">${probability}</td>
      <td>
        ${
          reading === 'nothing-to-compare'
            ? 'Nothing to compare with.'
            : html`${STANDS_OUT[reading]}By chance: ${often}.`
        }
      </td>
    </tr>
  `

const STANDS_OUT: { readonly [R in Exclude<Reading, 'nothing-to-compare'>]: Html | null } = {
  'chance-can': html`Could easily be chance. `,
  more: html`<b>More than elsewhere; worth a look.</b> `,
  fewer: html`<b>Fewer than elsewhere; worth a look.</b> `,
}

const howToRead = (cautions: readonly string[]): Html =>
  html`
    <section>
      <h2>How to read it</h2>
      <ul>
        <li>
          <b>Probability</b>: if this group were no different from the others, how often would the
          counts be at least this far apart? Fisher’s exact test, two-sided. 0.05 is one time in twenty.
        </li>
        <li>
          <b>Allowing for all groups</b>: among forty streets, about two stand out by chance. So the
          probability is raised for the number of groups in the table (Holm’s method). “Worth a look”
          means less than one time in twenty, which is common practice and not a rule.
        </li>
        ${cautions.map((caution) => html`<li>${caution}</li>`)}
      </ul>
    </section>
  `
