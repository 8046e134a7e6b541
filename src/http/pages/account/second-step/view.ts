import { qrSvg } from '../../../../letters/qr.ts'
import type { Offered } from '../../../../operations/access/second-step.ts'
import { type Html, html, markup } from '../../html.ts'
import { secondStepPath } from '../addresses.ts'

type SetUp = {
  readonly offered: Offered
  readonly to: string
  readonly fault: string | null
  /** Whether the organization asks for it. */
  readonly needed: boolean
}

export const setUpView = ({ offered: { secret, address }, to, fault, needed }: SetUp): Html =>
  html`<h1>A second step</h1><p class="lead">${needed ? 'Your organization asks for a code after the password.' : 'A code after the password keeps out whoever has learned it.'}</p><ol><li>Open an authenticator on your phone and let it read this square, or write the key into it.<div class="square">${markup(qrSvg(address))}</div><p>Key: <code>${spaced(secret)}</code></p></li><li><form class="sign-in" method="post" action="${secondStepPath}">${
    fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`
  }<input type="hidden" name="to" value="${to}"><p><label for="code">Write the six figures that it shows now</label><input id="code" name="code" inputmode="numeric" autocomplete="one-time-code" maxlength="10" required${fault && html` aria-invalid="true" aria-describedby="fault"`}></p><p><button>Set it up</button></p></form></li></ol>`

const spaced = (secret: string): string => secret.replaceAll(/(.{4})(?=.)/g, '$1 ')

export const recoveryView = (codes: readonly string[], to: string): Html =>
  html`<h1>Recovery codes</h1><p class="lead">The second step is set up. Each of these lets you in once without your phone. They are shown now and never again: print this page, or copy them to where only you look.</p><ul class="plain">${codes.map((code) => html`<li><code>${code}</code></li>`)}</ul><p><a class="button" href="${to}">I have kept them</a></p>`
