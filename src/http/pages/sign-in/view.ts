import { providerPath } from '../account/addresses.ts'
import { flag, type Html, html } from '../html.ts'

export type SignInForm = {
  readonly name: string
  /** Where to go then: an address of this service. */
  readonly to: string
  readonly fault: string | null
  /** Counties that have a sign-in of their own. */
  readonly providers: readonly { readonly county: string; readonly title: string }[]
}

export const signInView = ({ name, to, fault, providers }: SignInForm): Html =>
  html`<h1>Sign in</h1><p class="lead">What a county’s file says was built, against what was found in the ground.</p><form class="sign-in" method="post" action="/sign-in">${
    fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`
  }<input type="hidden" name="to" value="${to}"><p><label for="name">Name</label><input id="name" name="name" value="${name}" autocomplete="username" autocapitalize="none" spellcheck="false" maxlength="80" required ${flag('autofocus', fault === null)}></p><p><label for="password">Password</label><input id="password" name="password" type="password" autocomplete="current-password" maxlength="200" required${fault && html` aria-invalid="true" aria-describedby="fault"`} ${flag('autofocus', fault !== null)}></p><p><button>Sign in</button></p></form>${
    providers.length > 0 &&
    html`<ul class="plain">${providers.map(({ county, title }) => html`<li><a class="button" href="${providerPath(county, to)}">Sign in with ${title}</a></li>`)}</ul>`
  }<p class="soft">Accounts are given out by the county. If you have forgotten your password, ask whoever gave you yours.</p>`
