import type { Subscription } from '../../../store/subscriptions.ts'
import { formButton } from '../account/form-button.ts'
import { type Html, html } from '../html.ts'
import { changesPath, parcelPath, subscribePath, unsubscribePath } from '../layout/addresses.ts'
import { dayAt } from '../words/dates.ts'
import type { ChangeLine } from './present.ts'

/** Where the form stands on the page. */
export const TOLD = 'told'

export type ToldShown = {
  readonly live: readonly Subscription[]
  /** The key of the one just made: told this once. */
  readonly secret: string | null
  readonly typed: string
  readonly fault: string | null
}

/** Who is told when the status of a parcel changes, and asking to be: here, or by a message to a program. */
export const toldPart = (county: string, parcel: string, { live, secret, typed, fault }: ToldShown): Html => {
  const here = live.find(({ address }) => address === null)
  const elsewhere = live.filter(({ address }) => address !== null)
  return html`<section id="${TOLD}"><h2>Be told when it changes</h2>${
    here
      ? html`<p>Since ${dayAt(here.madeAt)} your office is told here: see <a href="${changesPath(county)}">what changed</a>.</p>${formButton(unsubscribePath(county, here.id), 'Tell us no more')}`
      : html`<p>Each change of the status of this parcel is then listed under <a href="${changesPath(county)}">what changed</a>, for everybody in your office.</p><form method="post" action="${subscribePath(county, parcel)}"><p><button name="here" value="yes">Tell us here</button></p></form>`
  }${
    secret &&
    html`<div class="notice" role="status"><p>From now on this address is told. Each message is signed with the key below, so that your program can tell it from anybody else’s. The key is shown now and never again.</p><p><code>${secret}</code></p></div>`
  }<details${(fault !== null || secret !== null || elsewhere.length > 0) && html` open`}><summary>By a message to your office’s program</summary>${
    elsewhere.length > 0 &&
    html`<ul class="hits">${elsewhere.map(
      ({ id, address, madeAt }) =>
        html`<li>Told since ${dayAt(madeAt)}: <code class="long">${address}</code>${formButton(unsubscribePath(county, id), 'Tell it no more')}</li>`,
    )}</ul>`
  }<form method="post" action="${subscribePath(county, parcel)}"><div class="fields"><div><label for="address">Address of your office’s program</label><input id="address" name="address" type="url" inputmode="url" autocapitalize="none" spellcheck="false" maxlength="2000" required value="${typed}" placeholder="https://" aria-describedby="${fault ? 'address-fault ' : ''}address-help"${fault && html` aria-invalid="true"`}>${
    fault && html`<p class="fault" id="address-fault" role="alert">${fault}</p>`
  }<p class="soft" id="address-help">It begins with https:// and is reached over the Internet. Each time the status of this parcel changes, a short message goes there: the parcel, the word now and before, and when; nothing else.</p></div></div><p><button>Tell this address</button></p></form></details></section>`
}

/** What an office was told here, newest first: of each change the word now, the word before, and when. */
export const changesView = (county: string, changes: readonly ChangeLine[]): Html =>
  html`<h1>What changed</h1>${
    changes.length === 0
      ? html`<p class="lead">Nothing yet. On the page of a parcel, “Tell us here” asks for its changes to be listed here.</p>`
      : html`<p class="lead">Changes of the parcels that your office asked to be told of, newest first. The page of a parcel says how it stands today.</p><ul class="hits">${changes.map(
          ({ parcel, now, before, sentence, at }) =>
            html`<li><a href="${parcelPath(county, parcel)}"><span class="number">${parcel}</span></a> <b>${now}</b>, ${dayAt(at)}. <span class="soft">${before === null ? 'Its first status.' : html`Before: ${before}.`}</span><p>${sentence}</p></li>`,
        )}</ul>`
  }`
