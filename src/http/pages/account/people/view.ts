import type { PersonChange } from '../../../../operations/access/change-person.ts'
import type { AccountListed } from '../../../../store/access/people.ts'
import { type Html, html } from '../../html.ts'
import { peoplePath } from '../addresses.ts'
import { formButton } from '../form-button.ts'

type People = {
  readonly people: readonly AccountListed[]
  readonly own: string
  /** An invitation that was just made, told this once. */
  readonly link: string | null
  readonly fault: string | null
}

export const linkTold = (link: string): Html =>
  html`<section class="notice" role="status"><h2>The invitation</h2><p>Hand this link to the person it is for. It is shown now and never again, is good for a week, and whoever opens it first chooses the password.</p><p><code>${link}</code></p></section>`

export const peopleView = ({ people, own, link, fault }: People): Html =>
  html`<h1>People</h1>${link && linkTold(link)}${fault && html`<p class="notice bad" role="alert">${fault}</p>`}<ul class="hits">${people.map((it) => person(it, it.id === own))}</ul><section><h2>Invite somebody</h2><form method="post" action="${peoplePath}"><div class="fields"><div><label for="name">E-mail address or sign-in name</label><input id="name" name="name" autocapitalize="none" spellcheck="false" maxlength="80" required></div><div><label for="label">What the account is for</label><input id="label" name="label" maxlength="80" required></div></div><p><label class="choice"><input type="checkbox" name="administers" value="yes"> Looks after the organization too</label></p><p><button>Invite</button></p></form></section>`

function person(it: AccountListed, isOwn: boolean): Html {
  const { id, label, signInName, administers, suspendedAt, erasedAt, hasPassword, hasSecondStep } = it
  const state = erasedAt
    ? 'erased'
    : suspendedAt
      ? 'suspended'
      : signInName === null
        ? 'works by tokens'
        : hasPassword
          ? null
          : 'invited'
  return html`<li><b>${label}</b> ${signInName}${state && html` <span class="soft">${state}</span>`}${administers && html` <span class="soft">looks after the organization</span>`}${isOwn && html` <span class="soft">you</span>`}${!isOwn && erasedAt === null && changes(id, { administers, suspended: suspendedAt !== null, signsIn: signInName !== null, hasSecondStep })}</li>`
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
  return html`<div class="fields">${
    suspended
      ? change('let-back-in', 'Let back in')
      : html`${change('suspend', 'Suspend')}${administers ? change('take-administration', 'No longer looks after it') : change('give-administration', 'Let them look after it')}${signsIn && formButton(`${peoplePath}/${id}/invitation`, 'New invitation')}`
  }${hasSecondStep && change('take-off-second-step', 'Take the second step off')}<details><summary>Erase</summary><p>What is personal goes: name, password, sessions, tokens. What the account did stays, under a name that is nobody’s. There is no way back.</p>${formButton(`${peoplePath}/${id}/erasure`, 'Erase for good')}</details></div>`
}
