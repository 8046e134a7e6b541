import type { OwnOrganization } from '../../../../operations/access/organizations.ts'
import { LEAST_CHARACTERS, MOST_CHARACTERS } from '../../../../operations/access/password-rules.ts'
import type { AccountListed } from '../../../../store/access/people.ts'
import type { SessionListed } from '../../../../store/access/sessions.ts'
import { type Html, html } from '../../html.ts'
import { dayAt } from '../../words/dates.ts'
import { accountPath, organizationsPath, peoplePath, secondStepPath, tokensPath } from '../addresses.ts'
import { formButton } from '../form-button.ts'

type Own = {
  readonly person: AccountListed
  readonly own: OwnOrganization
  readonly sessions: readonly SessionListed[]
  /** The session this page is read in. */
  readonly current: string
  readonly reviewsIn: readonly string[]
  readonly fault?: string
  readonly done?: string
}

export const ownView = ({ person, own, sessions, current, reviewsIn, fault, done }: Own): Html =>
  html`
    <h1>Account</h1>
    ${done && html`<p class="notice" role="status">${done}</p>`}
    ${fault && html`<p class="notice bad" role="alert">${fault}</p>`}
    <p class="lead">
      ${person.label}, ${own.organization.name}. ${
        person.signInName && html`You sign in as <b>${person.signInName}</b>.`
      }
    </p>
    <ul class="plain">
      <li><a href="${tokensPath}">Tokens</a> for programs</li>
      ${person.administers && html`<li><a href="${peoplePath}">People</a> of ${own.organization.name}</li>`}
      ${
        person.administers &&
        reviewsIn.map(
          (county) => html`
            <li><a href="${organizationsPath(county)}">Organizations in the county</a></li>
          `,
        )
      }
      <li>
        <a href="/v1/people/own/data" download="my-data.json">Your data</a> (all that Asfound keeps
        about you, as a file)
      </li>
    </ul>
    ${signedIn(sessions, current)}${person.hasPassword && password()}${step(person, own)}
  `

const signedIn = (sessions: readonly SessionListed[], current: string): Html =>
  html`
    <section>
      <h2>Where you are signed in</h2>
      <ul class="hits">
        ${sessions.map(
          ({ id, browser, begunAt, lastUsedAt }) =>
            html`
              <li>
                ${browser ?? 'An unknown browser'}, since ${dayAt(begunAt)}, last
                used ${dayAt(lastUsedAt)}
                ${
                  id === current
                    ? html` <b>this browser</b>`
                    : formButton(`${accountPath}/sessions/${id}/end`, 'Sign out')
                }
              </li>
            `,
        )}
      </ul>
    </section>
  `

const password = (): Html =>
  html`
    <section>
      <h2>Password</h2>
      <form class="sign-in" method="post" action="${accountPath}/password">
        <p>
          <label for="current">Current password</label>
          <input
            id="current" name="current" type="password" autocomplete="current-password" maxlength="200"
            required
          >
        </p>
        <p>
          <label for="wanted">
            New password <span>(at least ${LEAST_CHARACTERS} characters; a few words work well)</span>
          </label>
          <input
            id="wanted" name="wanted" type="password" autocomplete="new-password"
            minlength="${LEAST_CHARACTERS}" maxlength="${MOST_CHARACTERS}" required
          >
        </p>
        <p><button>Change password</button></p>
      </form>
    </section>
  `

const step = ({ hasSecondStep }: AccountListed, { organization }: OwnOrganization): Html =>
  html`
    <section>
      <h2>Two-step sign-in</h2>
      ${
        hasSecondStep
          ? html`
            <p>On. You enter a code after your password.</p>
            ${organization.secondStep === 'offered' && removal()}
          `
          : html`
            <p>Off. Anyone who learns your password can sign in.</p>
            <p><a class="button" href="${secondStepPath}">Turn it on</a></p>
          `
      }
    </section>
  `

const removal = (): Html =>
  html`
    <form class="sign-in" method="post" action="${accountPath}/second-step/removal">
      <p>
        <label for="again">Your password</label>
        <input
          id="again" name="current" type="password" autocomplete="current-password" maxlength="200"
          required
        >
      </p>
      <p><button>Turn it off</button></p>
    </form>
  `
