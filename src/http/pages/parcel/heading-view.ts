import type { Alias, Parcel } from '../../../store/parcels.ts'
import { type Html, html } from '../html.ts'
import { dayInWords } from '../words/dates.ts'

/** Number, address, old numbers; and, after a search that was not exact, how it led here. */
export const heading = (
  { number, address, retiredOn }: Parcel,
  oldNumbers: readonly Alias[],
  came: string | null,
): Html =>
  html`${came && html`<p class="notice" role="status">${came}</p>`}<h1><span class="number">${number}</span> ${address ?? 'No address on file'}</h1>${
    retiredOn && html`<p>This number was retired on ${dayInWords(retiredOn)}.</p>`
  }${oldNumbers.length > 0 && html`<p class="soft">Once: ${oldNumbers.map(oldNumber).join('; ')}.</p>`}`

const oldNumber = ({ number, kind, changedOn }: Alias): string =>
  `${number} (${kind}${changedOn ? ` ${dayInWords(changedOn)}` : ''})`
