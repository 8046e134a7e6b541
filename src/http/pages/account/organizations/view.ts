import type { Admission, OrganizationKind } from '../../../../store/access/admissions.ts'
import { type Html, html } from '../../html.ts'
import { dayAt } from '../../words/dates.ts'
import { organizationsPath } from '../addresses.ts'
import { formButton } from '../form-button.ts'
import { linkTold } from '../people/view.ts'

type Organizations = {
  readonly county: string
  readonly admissions: readonly Admission[]
  readonly link: string | null
  readonly fault: string | null
}

const KINDS: { readonly [K in OrganizationKind]: string } = {
  county: 'the county’s department',
  firm: 'inspection firm',
  agent: 'agent’s office',
}

export const organizationsView = ({ county, admissions, link, fault }: Organizations): Html =>
  html`<h1>Who works in the county</h1>${link && linkTold(link)}${fault && html`<p class="notice bad" role="alert">${fault}</p>`}<ul class="hits">${admissions.map((it) => line(county, it))}</ul><section><h2>Take one in</h2><form method="post" action="${organizationsPath(county)}"><div class="fields"><div><label for="organization">Name of the firm or office</label><input id="organization" name="organization" maxlength="80" required></div><div><label for="kind">It is</label><select id="kind" name="kind"><option value="firm">an inspection firm</option><option value="agent">an agent’s office</option></select></div><div><label for="name">E-mail or sign-in name of its first person</label><input id="name" name="name" autocapitalize="none" spellcheck="false" maxlength="80" required></div><div><label for="label">What that account is for</label><input id="label" name="label" value="office" maxlength="80" required></div></div><p><button>Take in and invite</button></p></form></section>`

const line = (county: string, { organization, admittedAt, withdrawnAt }: Admission): Html =>
  html`<li><b>${organization.name}</b>, ${KINDS[organization.kind]}, ${withdrawnAt ? html`until ${dayAt(withdrawnAt)}` : html`since ${dayAt(admittedAt)}`}${
    organization.kind !== 'county' &&
    (withdrawnAt
      ? formButton(`${organizationsPath(county)}/${organization.id}/admission`, 'Let back in')
      : formButton(`${organizationsPath(county)}/${organization.id}/withdrawal`, 'Shut out'))
  }</li>`
