import { qrSvg } from '../../../../letters/qr.ts'
import type { Offered } from '../../../../operations/access/second-step.ts'
import { type Html, html, markup } from '../../html.ts'
import { secondStepPath } from '../addresses.ts'

type SetUp = {
  readonly offered: Offered
  readonly to: string
  readonly fault: string | null
  /** Whether the organization requires it. */
  readonly needed: boolean
}

export const setUpView = ({ offered: { secret, address }, to, fault, needed }: SetUp): Html =>
  html`
    <h1>Two-step sign-in</h1>
    <p class="lead">
      ${
        needed
          ? 'Your organization requires a code after the password.'
          : 'With a code after the password, a stolen password is not enough to sign in.'
      }
    </p>
    <ol>
      <li>
        Open an authenticator app on your phone. Scan the QR code or type the key.
        <div class="square">${markup(qrSvg(address))}</div>
        <p>Key: <code>${spaced(secret)}</code></p>
      </li>
      <li>
        <form class="sign-in" method="post" action="${secondStepPath}">
          ${fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`}
          <input type="hidden" name="to" value="${to}">
          <p>
            <label for="code">Enter the six-digit code that the app shows</label>
            <input
              id="code" name="code" inputmode="numeric" autocomplete="one-time-code" maxlength="10"
              required${fault && html` aria-invalid="true" aria-describedby="fault"`}
            >
          </p>
          <p><button>Turn it on</button></p>
        </form>
      </li>
    </ol>
  `

const spaced = (secret: string): string => secret.replaceAll(/(.{4})(?=.)/g, '$1 ')

export const recoveryView = (codes: readonly string[], to: string): Html =>
  html`
    <h1>Recovery codes</h1>
    <p class="lead">
      Two-step sign-in is on. Each of these codes lets you in once without your phone. They are shown
      only once. Print this page or copy the codes to a safe place.
    </p>
    <ul class="plain">
      ${codes.map((code) => html`<li><code>${code}</code></li>`)}
    </ul>
    <p><a class="button" href="${to}">I have saved my codes</a></p>
  `
