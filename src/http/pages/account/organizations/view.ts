import type { Admission, OrganizationKind } from '../../../../store/access/admissions.ts'
import { type Html, html } from '../../html.ts'
import { dayAt } from '../../words/dates.ts'
import { organizationsPath } from '../addresses.ts'
import { formButton } from '../form-button.ts'
import { linkNotice } from '../people/view.ts'

type Organizations = {
  readonly county: string
  readonly admissions: readonly Admission[]
  readonly link: string | null
  readonly fault: string | null
}

const KINDS: { readonly [K in OrganizationKind]: string } = {
  county: 'county department',
  firm: 'inspection firm',
  agent: 'agent’s or lender’s office',
}

export const organizationsView = ({ county, admissions, link, fault }: Organizations): Html =>
  html`
    <h1>Organizations</h1> <p class="lead">
      The firms and offices that can use Asfound in this county.
    </p>
    ${link && linkNotice(link)}
    ${fault && html`<p class="notice bad" role="alert">${fault}</p>`}
    <ul class="hits">${admissions.map((it) => line(county, it))}</ul>
    <section>
      <h2>Add an organization</h2>
      <form method="post" action="${organizationsPath(county)}">
        <div class="fields">
          <div>
            <label for="organization">Name of the firm or office</label>
            <input id="organization" name="organization" maxlength="80" required>
          </div>
          <div>
            <label for="kind">Type</label>
            <select id="kind" name="kind">
              <option value="firm">an inspection firm</option>
              <option value="agent">an agent’s or lender’s office</option>
            </select>
          </div>
          <div>
            <label for="name">Email or sign-in name of its first administrator</label>
            <input
              id="name" name="name" autocapitalize="none" spellcheck="false" maxlength="80" required
            >
          </div>
          <div>
            <label for="label">What this account is for</label>
            <input id="label" name="label" value="office" maxlength="80" required>
          </div>
        </div>
        <p><button>Add and invite</button></p>
      </form>
    </section>
  `

const line = (county: string, { organization, admittedAt, withdrawnAt }: Admission): Html =>
  html`
    <li>
      <b>${organization.name}</b>, ${KINDS[organization.kind]}, ${
        withdrawnAt ? html`access removed ${dayAt(withdrawnAt)}` : html`since ${dayAt(admittedAt)}`
      }
      ${
        organization.kind !== 'county' &&
        (withdrawnAt
          ? formButton(`${organizationsPath(county)}/${organization.id}/admission`, 'Restore access')
          : formButton(`${organizationsPath(county)}/${organization.id}/withdrawal`, 'Remove access'))
      }
    </li>
  `
