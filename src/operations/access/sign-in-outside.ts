import { err, ok, type Result } from '../../base/result.ts'
import type { Identity } from '../../net/sign-in-provider.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { admissionsOf } from '../../store/access/admissions.ts'
import { accountBoundTo, bindOutside, isBound } from '../../store/access/outside-identities.ts'
import { findSignIn } from '../../store/access/sign-in.ts'
import { DOORKEEPER, memberOf } from '../../store/database/actor.ts'
import type { Database, Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { type Entrant, openSession, type SessionBegun, type SignInContext } from './open-session.ts'

export type OutsideAsked = {
  readonly identity: Identity
  /** The county whose sign-in vouches for the identity. */
  readonly county: string
  /** Whether its own two-step sign-in counts. */
  readonly secondStep: 'here' | 'provider'
  readonly browser: string | null
}

/**
 * Lets somebody in whom the county's own sign-in vouches for: the account bound to that identity, or at the first time
 * the account of the county's department whose name is the address that the provider verified. Nobody is let in who
 * was not invited. Refused in words for the person.
 */
export const signInOutside = (
  context: SignInContext,
  { identity, county, secondStep, browser }: OutsideAsked,
): Promise<Result<SessionBegun, string>> =>
  transact(context.database, DOORKEEPER, async (tx, within) => {
    const bound = await accountBoundTo(tx, identity)
    if (bound?.suspended) return err('This account is suspended. Ask your administrator.')
    const entrant = bound ?? (await invitedBy(tx, identity))
    if (!entrant) {
      return err('Nobody is invited with this email address. Ask the administrator of your organization.')
    }
    if (!(await isOfDepartment(within, entrant, county))) {
      return err('Your account is not of this county’s department. Sign in with your name and password.')
    }
    if (!bound) await bind(tx, context, entrant, identity)
    // A provider with two-step sign-in does what `required` asks; one of its own here still counts.
    const shown = secondStep === 'provider' ? 'provider-and-code' : 'provider'
    return ok(await openSession(tx, context, entrant, { shown, browser }))
  })

/** Whose name is the address that the provider verified, where no other identity of that provider is theirs. */
async function invitedBy(tx: Tx, { issuer, email }: Identity): Promise<Entrant | undefined> {
  const kept = email === null ? undefined : await findSignIn(tx, email)
  return kept && !(await isBound(tx, kept.account, issuer)) ? kept : undefined
}

async function bind(
  tx: Tx,
  context: SignInContext,
  { account, organization }: Entrant,
  identity: Identity,
): Promise<void> {
  const at = context.clock()
  await bindOutside(tx, account, identity, at)
  const event = { id: context.newId(), kind: 'outside-identity-bound', organization, account, at } as const
  await recordAccess(tx, { account }, event)
}

/** Asked in the account's own name: where its organization works is its own to see. */
const isOfDepartment = (within: Database, entrant: Entrant, county: string): Promise<boolean> =>
  transact(within, memberOf(entrant), async (tx) => {
    const admissions = await admissionsOf(tx, entrant.organization)
    return (
      entrant.role === 'reviewer' &&
      admissions.some((it) => it.county === county && it.organization.kind === 'county' && !it.withdrawnAt)
    )
  })
