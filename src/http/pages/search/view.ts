import { type Html, html } from '../html.ts'
import { parcelPath } from '../layout/addresses.ts'
import type { Hit } from './present.ts'

export const searchStart = (example: string): Html =>
  html`<h1>Find a parcel</h1><p class="lead">Write its number in any spelling, an old number, or the address, even in part.</p>${ways(example)}`

export const searchList = (county: string, title: string, hits: readonly Hit[]): Html =>
  html`<h1>${title}</h1><ul class="hits">${hits.map(
    ({ number, address, retiredOn, because }) =>
      html`<li><a href="${parcelPath(county, number)}"><span class="number">${number}</span> ${address ?? 'no address on file'}</a>${because && html` <span class="soft">${because}</span>`}${retiredOn && html` <span class="soft">retired</span>`}</li>`,
  )}</ul>`

export const searchNothing = (asked: string, example: string): Html =>
  html`<h1>Nothing found for “${asked}”</h1><p class="lead">No parcel has that number, old number or address, nor one like it.</p>${ways(example)}<p>A parcel that was split or merged is found by its old number. A parcel that is not on the county’s list at all has to be put there by the county.</p>`

const ways = (example: string): Html =>
  html`<ul><li>A number reads the same with or without its dashes: <code>${example}</code> or <code>${example.replaceAll(/\D/g, '')}</code>.</li><li>The beginning of a number is enough, and so is a street without the house.</li><li>Leave out unit, city and state.</li></ul>`
