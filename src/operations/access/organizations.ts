import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import {
  type Admission,
  admissionHeld,
  admissionsOf,
  admissionsTo,
  admit,
  insertOrganization,
  kindOf,
  type Organization,
  organizationById,
  withdrawAdmission as withdrawKept,
} from '../../store/access/admissions.ts'
import { insertAccount } from '../../store/access/people.ts'
import { DOORKEEPER, memberOf } from '../../store/database/actor.ts'
import { isDuplicate } from '../../store/database/database-fault.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, conflict, invalid, notFound } from '../refusal.ts'
import type { Asker } from './asker.ts'
import type { Invitation } from './invite.ts'
import { mayAskForNames, nameAndInvite, nameTaken } from './invite-person.ts'
import { mayMakeWayIn } from './may-let-in.ts'
import type { SignInContext } from './open-session.ts'
import { signInNameFault } from './sign-in-name.ts'

export type OwnOrganization = {
  readonly organization: Organization
  readonly admissions: readonly Admission[]
}

/** The asker's organization and where it works. */
export const readOwnOrganization = (context: SignInContext, asker: Asker): Promise<OwnOrganization> =>
  transact(context.database, memberOf(asker), async (tx) => ({
    organization: (await organizationById(tx, asker.organization))!,
    admissions: await admissionsOf(tx, asker.organization),
  }))

/** Who works in a county, or did. */
export const listAdmissions = (
  context: SignInContext,
  asker: Asker,
  county: string,
): Promise<readonly Admission[]> =>
  transact(context.database, memberOf(asker), (tx) => admissionsTo(tx, county))

export type NewOrganization = {
  readonly kind: 'firm' | 'agent'
  readonly name: string
  /** Who will look after it. */
  readonly administrator: { readonly signInName: string; readonly label: string }
}

export type OrganizationTaken = { readonly admission: Admission; readonly invitation: Invitation }

/** Takes a firm or an agent's office into a county, with a first person who is invited to look after it. */
export async function takeInOrganization(
  context: SignInContext,
  asker: Asker,
  county: string,
  { kind, name, administrator }: NewOrganization,
): Promise<Answer<OrganizationTaken>> {
  const signInName = administrator.signInName.trim().toLowerCase()
  const fault = signInNameFault(signInName)
  if (fault) return invalid({ pointer: '/administrator/signInName', message: fault })
  const wait = await mayAskForNames(context, asker)
  if (!wait.ok) return wait
  try {
    return await transact(context.database, memberOf(asker), async (tx, within) => {
      const may = await mayMakeWayIn(context, within, asker)
      if (!may.ok) return may
      const [organization, account, at] = [context.newId(), context.newId(), context.clock()]
      await insertOrganization(tx, { id: organization, kind, name })
      await admit(tx, county, organization, asker.account, at)
      const { label } = administrator
      await transact(within, DOORKEEPER, (door) =>
        insertAccount(door, { id: account, organization, role: kind, label, administers: true }),
      )
      const invitation = await nameAndInvite(context, within, {
        id: account,
        name: signInName,
        madeBy: asker.account,
      })
      await note(context, asker, within, 'organization-admitted', organization, county)
      return ok({ admission: (await admissionHeld(tx, county, organization))!, invitation })
    })
  } catch (fault) {
    if (isDuplicate(fault, 'sign_in_name_key')) return nameTaken(context, asker)
    throw fault
  }
}

/** Admits an organization that another county took in, by the id it knows itself by; or lets one back in. */
export const admitOrganization = (
  context: SignInContext,
  asker: Asker,
  county: string,
  organization: string,
): Promise<Answer<Admission>> =>
  transact(context.database, memberOf(asker), async (tx, within) => {
    const kind = await transact(within, DOORKEEPER, (door) => kindOf(door, organization))
    if (kind === undefined) return notFound()
    if (kind === 'county') return conflict('A county department cannot be added to another county.')
    const before = await admissionHeld(tx, county, organization)
    if (before?.withdrawnAt === null) return ok(before)
    await admit(tx, county, organization, asker.account, context.clock())
    await note(context, asker, within, 'organization-admitted', organization, county)
    return ok((await admissionHeld(tx, county, organization))!)
  })

/** Its people lose access to the county; what they submitted stays, with its name. */
export const withdrawAdmission = (
  context: SignInContext,
  asker: Asker,
  county: string,
  organization: string,
): Promise<Answer<void>> =>
  transact(context.database, memberOf(asker), async (tx, within) => {
    const admission = await admissionHeld(tx, county, organization)
    if (!admission) return notFound()
    if (admission.organization.kind === 'county') {
      return conflict('A county’s own department keeps its access.')
    }
    if (admission.withdrawnAt !== null) return ok(undefined)
    await withdrawKept(tx, county, organization, context.clock())
    await note(context, asker, within, 'admission-withdrawn', organization, county)
    return ok(undefined)
  })

/** Of the organization it happened to, for its own people to see; noted by the door, which may for any. */
const note = (
  context: SignInContext,
  asker: Asker,
  within: Parameters<typeof transact>[0],
  kind: 'organization-admitted' | 'admission-withdrawn',
  organization: string,
  county: string,
) =>
  transact(within, DOORKEEPER, (door) =>
    recordAccess(door, asker, {
      id: context.newId(),
      kind,
      organization,
      account: null,
      body: { county },
      at: context.clock(),
    }),
  )
