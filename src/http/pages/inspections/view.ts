import { type Html, html } from '../html.ts'
import { inspectionPath } from '../inspection/addresses.ts'
import { briefPath, parcelPath } from '../layout/addresses.ts'
import { day } from '../words/dates.ts'
import type { InspectionLine, presentInspections } from './present.ts'

export const inspectionsView = (
  county: string,
  { drafts, submitted }: ReturnType<typeof presentInspections>,
  onThisPhone: Html,
): Html =>
  html`<h1>Inspections</h1><p class="lead">To prepare an inspection, find the parcel by its number or address: its page leads to the brief and to the form.</p>${onThisPhone}${
    drafts.length > 0 && html`<section><h2>Not handed in yet</h2>${list(county, drafts, true)}</section>`
  }<section><h2>Handed in</h2>${submitted.length === 0 ? html`<p>None yet.</p>` : list(county, submitted)}</section>`

const list = (county: string, lines: readonly InspectionLine[], isOpen = false): Html =>
  html`<ul class="hits inspections">${lines.map(
    ({ parcel, address, inspectedOn, says, status }) =>
      html`<li><a href="${parcelPath(county, parcel)}"><span class="number">${parcel}</span> ${address}</a><span class="soft">Inspected ${day(inspectedOn)}, ${says}</span><b>${status}</b><a href="${briefPath(county, parcel)}" aria-label="Brief for ${parcel}">Brief</a>${isOpen && html` <a href="${inspectionPath(county, parcel)}" aria-label="Go on with the inspection to ${parcel}">Go on</a>`}</li>`,
  )}</ul>`
