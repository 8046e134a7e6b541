import { dayOf } from '../../../base/plain-date.ts'
import { type Html, html } from '../html.ts'
import { patternsPath } from '../layout/addresses.ts'
import { bars } from '../parts/bars.ts'
import { day } from '../words/dates.ts'
import type { CountTable } from './present.ts'

type County = { readonly id: string; readonly name: string }

export const overviewView = ({ id, name }: County, tables: readonly CountTable[], at: Date): Html =>
  html`
    <h1>${name}: overview</h1>
    <p class="soft">Counted on ${day(dayOf(at))}, by each parcel’s latest status.</p>
    <p>
      <a href="${patternsPath(id)}">Patterns across the county</a>: the decades, streets and forms with
      the most differences.
    </p>
    ${tables.map(table)}
  `

const table = ({ title, first, columns, rows, bars: drawn }: CountTable): Html =>
  html`
    <section class="abreast">
      <div class="scroll" tabindex="0" role="group" aria-label="${title}, table">
        <table>
          <caption>${title}</caption>
          <thead>
            <tr>
              <th scope="col">${first}</th>
              ${columns.map((name) => html`<th scope="col" class="figure">${name}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${
              rows.length === 0
                ? html`<tr><td colspan="${columns.length + 1}">None.</td></tr>`
                : rows.map(
                    ({ name, cells }) =>
                      html`
                        <tr>
                          <th scope="row">${name}</th>
                          ${cells.map(
                            (count) => html`<td class="figure">${count.toLocaleString('en-US')}</td>`,
                          )}
                        </tr>
                      `,
                  )
            }
          </tbody>
        </table>
      </div>
      ${
        rows.length > 0 &&
        html`
          <div>
            <p class="soft">${drawn}</p>
            ${bars(rows.map(({ name, bar }) => ({ name, count: bar })))}
          </div>
        `
      }
    </section>
  `
