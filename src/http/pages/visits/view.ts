import { type Html, html } from '../html.ts'
import { briefPath, parcelPath } from '../layout/addresses.ts'
import { visitPath } from '../visit/addresses.ts'
import { day } from '../words/dates.ts'
import type { presentVisits, VisitLine } from './present.ts'

export const visitsView = (
  county: string,
  { drafts, submitted }: ReturnType<typeof presentVisits>,
  onThisPhone: Html,
): Html =>
  html`<h1>Visits</h1><p class="lead">To prepare a visit, find the parcel by its number or address: its page leads to the brief and to the form.</p>${onThisPhone}${
    drafts.length > 0 && html`<section><h2>Not handed in yet</h2>${list(county, drafts, true)}</section>`
  }<section><h2>Handed in</h2>${submitted.length === 0 ? html`<p>None yet.</p>` : list(county, submitted)}</section>`

const list = (county: string, lines: readonly VisitLine[], isOpen = false): Html =>
  html`<ul class="hits visits">${lines.map(
    ({ parcel, address, visitedOn, says, status }) =>
      html`<li><a href="${parcelPath(county, parcel)}"><span class="number">${parcel}</span> ${address}</a><span class="soft">Visited ${day(visitedOn)}, ${says}</span><b>${status}</b><a href="${briefPath(county, parcel)}" aria-label="Brief for ${parcel}">Brief</a>${isOpen && html` <a href="${visitPath(county, parcel)}" aria-label="Go on with the visit to ${parcel}">Go on</a>`}</li>`,
  )}</ul>`
