import type { Subscription } from '../../../store/subscriptions.ts'
import { formButton } from '../account/form-button.ts'
import { type Html, html } from '../html.ts'
import { subscribePath, unsubscribePath } from '../layout/addresses.ts'
import { dayAt } from '../words/dates.ts'

/** Where the form stands on the page. */
export const TOLD = 'told'

export type ToldShown = {
  readonly live: readonly Subscription[]
  /** The key of the one just made: told this once. */
  readonly secret: string | null
  readonly typed: string
  readonly fault: string | null
}

/** Who is told when the status of a parcel changes, and asking to be. */
export const toldPart = (county: string, parcel: string, { live, secret, typed, fault }: ToldShown): Html =>
  html`<section id="${TOLD}"><h2>Be told when it changes</h2>${
    secret &&
    html`<div class="notice" role="status"><p>From now on this address is told. Each message is signed with the key below, so that your program can tell it from anybody else’s. The key is shown now and never again.</p><p><code>${secret}</code></p></div>`
  }${
    live.length > 0 &&
    html`<ul class="hits">${live.map(
      ({ id, address, madeAt }) =>
        html`<li>Told since ${dayAt(madeAt)}: <code class="long">${address}</code>${formButton(unsubscribePath(county, id), 'Tell it no more')}</li>`,
    )}</ul>`
  }<form method="post" action="${subscribePath(county, parcel)}"><div class="fields"><div><label for="address">Address of your office’s program</label><input id="address" name="address" type="url" inputmode="url" autocapitalize="none" spellcheck="false" maxlength="2000" required value="${typed}" placeholder="https://" aria-describedby="${fault ? 'address-fault ' : ''}address-help"${fault && html` aria-invalid="true"`}>${
    fault && html`<p class="fault" id="address-fault" role="alert">${fault}</p>`
  }<p class="soft" id="address-help">It begins with https:// and is reached over the Internet. Each time the status of this parcel changes, a short message goes there: the parcel, the word now and before, and when; nothing else.</p></div></div><p><button>Tell this address</button></p></form></section>`
