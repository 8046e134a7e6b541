import { type Html, html } from '../html.ts'
import { parcelPath } from '../layout/addresses.ts'
import type { Hit } from './present.ts'

export const searchStart = (example: string): Html =>
  html`
    <h1>Find a parcel</h1>
    <p class="lead">Enter a parcel number, an old number or an address. Part of it is enough.</p>
    ${ways(example)}
  `

export const searchList = (county: string, title: string, hits: readonly Hit[]): Html =>
  html`
    <h1>${title}</h1>
    <ul class="hits">
      ${hits.map(
        ({ number, address, retiredOn, because }) =>
          html`
            <li>
              <a href="${parcelPath(county, number)}">
                <span class="number">${number}</span> ${address ?? 'no address on file'}
              </a>
              ${because && html` <span class="soft">${because}</span>`}
              ${retiredOn && html` <span class="soft">retired</span>`}
            </li>
          `,
      )}
    </ul>
  `

export const searchNothing = (asked: string, example: string): Html =>
  html`
    <h1>Nothing found for “${asked}”</h1>
    <p class="lead">No parcel has this number or address, or one like it.</p>
    ${ways(example)}
    <p>
      You can find a split or merged parcel by its old number. If a parcel is not on the county’s list,
      ask the county to add it.
    </p>
  `

const ways = (example: string): Html =>
  html`
    <ul>
      <li>
        You can leave out the
        dashes: <code>${example}</code> or <code>${example.replaceAll(/\D/g, '')}</code>.
      </li>
      <li>The start of a number is enough. So is a street without a house number.</li>
      <li>Leave out the unit, city and state.</li>
    </ul>
  `
