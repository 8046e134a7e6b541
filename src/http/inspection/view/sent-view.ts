import { type Html, html } from '../../pages/html.ts'
import { parcelPath } from '../../pages/layout/addresses.ts'
import { type StatusShown, statusPanel } from '../../pages/parts/status-panel.ts'
import { inspectionPath, numberShown } from '../addresses.ts'
import type { Difference } from '../live/live.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'
import { differencesView } from './live-view.ts'

export type SentShown = {
  readonly sheet: Pick<InspectionSheet, 'county' | 'parcel'>
  readonly findings: string
  readonly status: StatusShown | null
  readonly differences: readonly Difference[]
  /** Where the pictures are, in words. */
  readonly photos: string | null
}

/** The inspection is with the county: what it came to, and what can still be done. */
export const sentView = ({ sheet, findings, status, differences, photos }: SentShown): Html =>
  html`
    <h1 id="title" tabindex="-1">
      <span class="number">${numberShown(sheet.parcel)} ${sheet.parcel.address}</span>
      Submitted
    </h1>
    <p class="lead">
      Your findings are submitted. The county can see them, and they count from now on.
    </p>
    ${photos && html`<p class="kept" id="kept" role="status">${photos}</p>`}
    ${status && statusPanel(status)}
    ${differences.length > 0 && html`<h2>What differs from the record</h2>${differencesView(differences)}`}
    <p>
      <a class="button" href="${parcelPath(sheet.county, sheet.parcel.number)}">
        The parcel, line by line
      </a>
    </p>
    <form class="sent" method="post" action="${inspectionPath(sheet.county, sheet.parcel.number)}">
      <input type="hidden" name="findings" value="${findings}">
      <p>Something wrong in it? <button class="quiet" name="to" value="amend">Amend it</button></p>
      <p>
        Came back another day? <button class="quiet" name="to" value="again">
          Start another inspection
        </button>
      </p>
    </form>
  `
