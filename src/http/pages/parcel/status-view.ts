import type { StatusRead } from '../../../operations/parcels/read-status.ts'
import type { Alias } from '../../../store/parcels.ts'
import { statusWords } from '../../../words/agent/status.ts'
import { inLanguage } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'
import { type Html, html } from '../html.ts'
import type { LettersShown } from '../letter/present.ts'
import { lettersPart } from '../letter/view.ts'
import { type NotificationsShown, notificationsPart } from '../notifications/view.ts'
import { statusPanel } from '../parts/status-panel.ts'
import { STATUS_PAGE } from './copy.ts'
import { heading } from './heading-view.ts'

export type StatusOptions = {
  readonly county: string
  readonly language: Language
  readonly oldNumbers: readonly Alias[]
  readonly came: string | null
  readonly letters: LettersShown
  readonly notifications: NotificationsShown
}

/** What an agent or a lender sees of a parcel: its status, and nothing that would say whose it is or what was written. */
export function parcelStatus(
  { parcel, status }: StatusRead,
  { county, language, oldNumbers, came, letters, notifications }: StatusOptions,
): Html {
  const copy = inLanguage(STATUS_PAGE, language)
  return html`
    ${heading(parcel, oldNumbers, came, language)}
    ${statusPanel({ ...statusWords(status, language), asOf: status.asOf }, language)}
    <section><h2>${copy.letters}</h2>${lettersPart(county, parcel.number, letters, language)}</section>
    ${notificationsPart(county, parcel.number, notifications, language)}
    <p class="soft">${copy.limits}</p>
  `
}
