import { inLanguage } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'
import { providerPath } from '../account/addresses.ts'
import { flag, type Html, html } from '../html.ts'
import { SIGN_IN } from './copy.ts'

export type SignInForm = {
  readonly language: Language
  readonly name: string
  /** Where to go then: an address of this service. */
  readonly to: string
  readonly fault: string | null
  /** Counties that have a sign-in of their own. */
  readonly providers: readonly { readonly county: string; readonly title: string }[]
}

export const signInView = ({ language, name, to, fault, providers }: SignInForm): Html => {
  const copy = inLanguage(SIGN_IN, language)
  return html`
    <h1>${copy.title}</h1>
    <p class="lead">${copy.lead}</p>
    <form class="sign-in" method="post" action="/sign-in">
      ${fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`}
      <input type="hidden" name="to" value="${to}">
      <p>
        <label for="name">${copy.name}</label>
        <input
          id="name" name="name" value="${name}" autocomplete="username" autocapitalize="none"
          spellcheck="false" maxlength="80" required ${flag('autofocus', fault === null)}
        >
      </p>
      <p>
        <label for="password">${copy.password}</label>
        <input
          id="password" name="password" type="password" autocomplete="current-password" maxlength="200"
          required${fault && html` aria-invalid="true" aria-describedby="fault"`}
          ${flag('autofocus', fault !== null)}
        >
      </p>
      <p><button>${copy.submit}</button></p>
    </form>
    ${
      providers.length > 0 &&
      html`
        <ul class="plain">
          ${providers.map(
            ({ county, title }) => html`
              <li>
                <a class="button" href="${providerPath(county, to)}">${copy.withProvider(title)}</a>
              </li>
            `,
          )}
        </ul>
      `
    }
    <p class="soft">${copy.help}</p>
  `
}
