import type { PersonChange } from '../../../../operations/access/change-person.ts'
import type { AccountListed } from '../../../../store/access/people.ts'
import { type Html, html } from '../../html.ts'
import { peoplePath } from '../addresses.ts'
import { formButton } from '../form-button.ts'

type People = {
  readonly people: readonly AccountListed[]
  readonly own: string
  /** An invitation that was just made, shown once. */
  readonly link: string | null
  readonly fault: string | null
}

export const linkNotice = (link: string): Html =>
  html`
    <section class="notice" role="status">
      <h2>The invitation</h2>
      <p>
        Give this link to the person you invited. It is shown only once and works for one week. Whoever
        opens it first chooses the password.
      </p>
      <p><code>${link}</code></p>
    </section>
  `

export const peopleView = ({ people, own, link, fault }: People): Html =>
  html`
    <h1>People</h1>
    ${link && linkNotice(link)}
    ${fault && html`<p class="notice bad" role="alert">${fault}</p>`}
    <ul class="hits">${people.map((it) => person(it, it.id === own))}</ul>
    <section>
      <h2>Invite someone</h2>
      <form method="post" action="${peoplePath}">
        <div class="fields">
          <div>
            <label for="name">Email or sign-in name</label>
            <input
              id="name" name="name" autocapitalize="none" spellcheck="false" maxlength="80" required
            >
          </div>
          <div>
            <label for="label">What the account is for</label>
            <input id="label" name="label" maxlength="80" required>
          </div>
        </div>
        <p>
          <label class="choice">
            <input type="checkbox" name="administers" value="yes"> Administrator: can manage people and
            tokens
          </label>
        </p>
        <p><button>Invite</button></p>
      </form>
    </section>
  `

function person(it: AccountListed, isOwn: boolean): Html {
  const { id, label, signInName, administers, suspendedAt, erasedAt, hasPassword, hasSecondStep } = it
  const state = erasedAt
    ? 'erased'
    : suspendedAt
      ? 'suspended'
      : signInName === null
        ? 'uses tokens only'
        : hasPassword
          ? null
          : 'invited'
  return html`
    <li>
      <b>${label}</b> ${signInName}
      ${state && html` <span class="soft">${state}</span>`}
      ${administers && html` <span class="soft">administrator</span>`}
      ${isOwn && html` <span class="soft">you</span>`}
      ${
        !isOwn &&
        erasedAt === null &&
        changes(id, {
          administers,
          suspended: suspendedAt !== null,
          signsIn: signInName !== null,
          hasSecondStep,
        })
      }
    </li>
  `
}

type Standing = {
  readonly administers: boolean
  readonly suspended: boolean
  readonly signsIn: boolean
  readonly hasSecondStep: boolean
}

const changes = (id: string, { administers, suspended, signsIn, hasSecondStep }: Standing): Html => {
  const change = (does: PersonChange, says: string) =>
    formButton(`${peoplePath}/${id}/change`, says, { change: does })
  return html`
    <div class="fields">
      ${
        suspended
          ? change('let-back-in', 'Restore access')
          : html`
            ${change('suspend', 'Suspend')}
            ${
              administers
                ? change('take-administration', 'Remove as administrator')
                : change('give-administration', 'Make administrator')
            }
            ${signsIn && formButton(`${peoplePath}/${id}/invitation`, 'New invitation')}
          `
      }
      ${hasSecondStep && change('take-off-second-step', 'Turn off two-step sign-in')}
      <details>
        <summary>Erase</summary>
        <p>
          This deletes the name, password, sessions and tokens. What the account did stays on record
          without a name. You cannot undo this.
        </p>
        ${formButton(`${peoplePath}/${id}/erasure`, 'Erase')}
      </details>
    </div>
  `
}
