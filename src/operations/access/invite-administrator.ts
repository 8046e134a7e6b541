import { err, ok, type Result } from '../../base/result.ts'
import type { ParcelNumberFormat } from '../../reading/parcel-number.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { addAccount, addCounty, addOrganization } from '../../store/access/enrol.ts'
import { addSignIn, findSignIn } from '../../store/access/sign-in.ts'
import { countyById } from '../../store/counties.ts'
import { administer } from '../../store/database/transact.ts'
import { type Invitation, invite } from './invite.ts'
import type { SignInContext } from './open-session.ts'
import { signInNameFault } from './sign-in-name.ts'

export type NewDepartment = {
  readonly county: string
  readonly department: string
  readonly signInName: string
  /** For a county that is not served yet. */
  readonly begin: {
    readonly name: string
    readonly rulePack: string
    readonly parcelFormat: ParcelNumberFormat
  } | null
}

/**
 * The first person of a county's department, who invites everybody else: as the owner, from the command line. Its
 * people must give a code after their password. Names of departments are not unique: a county may have two.
 */
export async function inviteAdministrator(
  context: SignInContext,
  { county, department, signInName: written, begin }: NewDepartment,
): Promise<Result<Invitation, string>> {
  const name = written.trim().toLowerCase()
  const fault = signInNameFault(name)
  if (fault) return err(`The sign-in name ${fault}.`)
  return administer(context.database, async (tx) => {
    if (await findSignIn(tx, name)) return err('That sign-in name is taken.')
    const known = await countyById(tx, county)
    if (!known && !begin)
      return err(`There is no county ${county} yet. Give its name, rule pack and parcel number format too.`)
    if (known && begin) return err(`The county ${county} already exists.`)
    if (begin) await addCounty(tx, { id: county, ...begin })
    const kind = 'county'
    const organization = await addOrganization(tx, {
      kind,
      name: department,
      counties: [county],
      secondStep: 'required',
    })
    const label = 'administration'
    const account = await addAccount(tx, { organization, role: 'reviewer', label, administers: true })
    await addSignIn(tx, account, name)
    const at = context.clock()
    await recordAccess(
      tx,
      { account: null },
      { id: context.newId(), kind: 'invited', organization, account, at },
    )
    return ok(await invite(tx, context, account, null))
  })
}
