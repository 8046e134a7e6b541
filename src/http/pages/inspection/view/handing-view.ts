import { type Html, html } from '../../html.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'

export type HandingShown = {
  readonly sheet: Pick<InspectionSheet, 'parcel'>
  /** What it waits for, in words. */
  readonly kept: string
  /** It may be on its way already: what is changed now could miss it. */
  readonly left: boolean
  readonly trouble: string | null
}

/** Asked to be handed in, and not there yet. */
export const handingView = ({ sheet, kept, left, trouble }: HandingShown): Html =>
  html`<h1 id="title" tabindex="-1"><span class="number">${sheet.parcel.number} ${sheet.parcel.address}</span>Ready to be handed in</h1><p class="kept" id="kept" role="status">${kept}</p>${trouble && html`<p class="notice bad" role="alert">${trouble}</p>`}<p class="lead">It goes as soon as there is signal, once and whole. You can close the browser and drive on: open any inspection of yours where there is signal, and it is sent.</p>${
    left
      ? html`<p>It may have arrived already, so it can’t be changed any more. Once it is known to be there, it can be amended.</p>`
      : html`<form class="sent"><button class="quiet" name="to" value="unhand">Go back and change it</button></form>`
  }`
