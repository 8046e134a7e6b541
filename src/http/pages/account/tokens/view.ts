import type { TokenListed } from '../../../../store/access/tokens.ts'
import { type Html, html } from '../../html.ts'
import { dayAt } from '../../words/dates.ts'
import { tokensPath } from '../addresses.ts'
import { formButton } from '../form-button.ts'

export const TOKEN_DAYS = [30, 90, 180, 366] as const

type Tokens = {
  readonly tokens: readonly TokenListed[]
  readonly own: string
  readonly counties: readonly string[]
  /** A token that was just made, shown once. */
  readonly token: string | null
  readonly fault: string | null
}

export const tokensView = ({ tokens, own, counties, token, fault }: Tokens): Html =>
  html`
    <h1>Tokens</h1>
    <p class="lead">
      Programs use a token to act for you. Anyone who has it can do what it allows, so keep it secret.
    </p>
    ${
      token &&
      html`
        <section class="notice" role="status">
          <h2>Your new token</h2>
          <p>Copy it now. It is not shown again.</p>
          <p><code>${token}</code></p>
        </section>
      `
    }
    ${fault && html`<p class="notice bad" role="alert">${fault}</p>`}
    <section>
      <h2>Active tokens</h2>
      ${
        tokens.length === 0
          ? html`<p>None.</p>`
          : html`<ul class="hits">${tokens.map((it) => line(it, own))}</ul>`
      }
    </section>
    <section>
      <h2>New token</h2>
      <form method="post" action="${tokensPath}">
        <div class="fields">
          <div>
            <label for="name">What it is for</label>
            <input id="name" name="name" maxlength="80" required>
          </div>
          <div>
            <label for="days">Works for</label>
            <select id="days" name="days">
              ${TOKEN_DAYS.map((days) => html`<option value="${days}">${days} days</option>`)}
            </select>
          </div>
          ${counties.map(
            (county, at) =>
              html`
                <div>
                  <label for="may-${at}">In ${county} it can</label>
                  <select id="may-${at}" name="may.${county}">
                    <option value="read">read</option>
                    <option value="write">read and write</option>
                    <option value="">nothing</option>
                  </select>
                </div>
              `,
          )}
        </div>
        <p><button>Create token</button></p>
      </form>
    </section>
  `

const line = (
  { id, account, name, counties, writes, expiresAt, lastUsedAt }: TokenListed,
  own: string,
): Html =>
  html`
    <li>
      <b>${name}</b>${account !== own && ' (another person in your organization)'}: ${counties
        .map((county) => `${writes.includes(county) ? 'reads and writes' : 'reads'} in ${county}`)
        .join(', ')}; ${expiresAt ? html`ends ${dayAt(expiresAt)}` : 'never ends'}; ${
        lastUsedAt ? html`last used ${dayAt(lastUsedAt)}` : 'not used yet'
      }.${formButton(`${tokensPath}/${id}/rotation`, 'Replace')}
      ${formButton(`${tokensPath}/${id}/withdrawal`, 'Revoke')}
    </li>
  `
