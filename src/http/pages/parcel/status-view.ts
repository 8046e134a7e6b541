import type { StatusRead } from '../../../operations/parcels/read-status.ts'
import type { Alias } from '../../../store/parcels.ts'
import { statusWords } from '../../../words/agent/status.ts'
import { type Html, html } from '../html.ts'
import type { LettersShown } from '../letter/present.ts'
import { lettersPart } from '../letter/view.ts'
import { statusPanel } from '../parts/status-panel.ts'
import { type ToldShown, toldPart } from '../subscription/view.ts'
import { heading } from './heading-view.ts'

export type StatusOptions = {
  readonly county: string
  readonly oldNumbers: readonly Alias[]
  readonly came: string | null
  readonly letters: LettersShown
  readonly told: ToldShown
}

/** What an agent or a lender sees of a parcel: its status, and nothing that would say whose it is or what was written. */
export const parcelStatus = (
  { parcel, status }: StatusRead,
  { county, oldNumbers, came, letters, told }: StatusOptions,
): Html =>
  html`${heading(parcel, oldNumbers, came)}${statusPanel({ ...statusWords(status, 'en'), asOf: status.asOf })}<section><h2>Letters</h2>${lettersPart(county, parcel.number, letters)}</section>${toldPart(county, parcel.number, told)}<p class="soft">This says what the county’s file and the last inspection show. It is no warranty of the system.</p>`
