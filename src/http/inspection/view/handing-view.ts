import { type Html, html } from '../../pages/html.ts'
import { numberShown } from '../addresses.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'

export type HandingShown = {
  readonly sheet: Pick<InspectionSheet, 'parcel'>
  /** What it waits for, in words. */
  readonly kept: string
  /** It may be on its way already: what is changed now could miss it. */
  readonly left: boolean
  readonly trouble: string | null
}

/** Told to be submitted, and not there yet. */
export const handingView = ({ sheet, kept, left, trouble }: HandingShown): Html =>
  html`
    <h1 id="title" tabindex="-1">
      <span class="number">${numberShown(sheet.parcel)} ${sheet.parcel.address}</span>
      Ready to submit
    </h1>
    <p class="kept" id="kept" role="status">${kept}</p>
    ${trouble && html`<p class="notice bad" role="alert">${trouble}</p>`}
    <p class="lead">
      It is sent as soon as you have signal. You can close the browser: open any of your inspections
      where you have signal, and this one is sent too.
    </p>
    ${
      left
        ? html`
        <p>
          It may have arrived already, so you can’t change it now. Once it has arrived, you can
          amend it.
        </p>
      `
        : html`
        <form class="sent">
          <button class="quiet" name="to" value="unhand">Go back and change it</button>
        </form>
      `
    }
  `
