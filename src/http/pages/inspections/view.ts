import { inspectionPath } from '../../inspection/addresses.ts'
import { type Html, html } from '../html.ts'
import { briefPath, parcelPath } from '../layout/addresses.ts'
import { day } from '../words/dates.ts'
import type { InspectionLine, presentInspections } from './present.ts'

export const inspectionsView = (
  county: string,
  { drafts, submitted }: ReturnType<typeof presentInspections>,
  onThisPhone: Html,
): Html =>
  html`
    <h1>Inspections</h1>
    <p class="lead">
      To start an inspection, find the parcel by its number or address. Its page has the brief and the
      form.
    </p>
    ${onThisPhone}
    ${drafts.length > 0 && html`<section><h2>Not submitted yet</h2>${list(county, drafts, true)}</section>`}
    <section>
      <h2>Submitted</h2>
      ${submitted.length === 0 ? html`<p>None yet.</p>` : list(county, submitted)}
    </section>
  `

const list = (county: string, lines: readonly InspectionLine[], isOpen = false): Html =>
  html`
    <ul class="hits inspections">
      ${lines.map(
        ({ parcel, at, address, inspectedOn, says, status }) =>
          html`
            <li>
              <a href="${parcelPath(county, at)}">
                <span class="number">${parcel}</span> ${address}
              </a><span class="soft">Inspected ${day(inspectedOn)}, ${says}</span><b>${status}</b>
              <a href="${briefPath(county, at)}" aria-label="Brief for ${parcel}">Brief</a>
              ${
                isOpen &&
                html` <a
                  href="${inspectionPath(county, at)}"
                  aria-label="Continue the inspection of ${parcel}"
                >
                  Continue
                </a>
                `
              }
            </li>
          `,
      )}
    </ul>
  `
