import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { type AccountListed, accountById, insertAccount } from '../../store/access/people.ts'
import { addSignIn, freeStaleName } from '../../store/access/sign-in.ts'
import { beginTry, type Guarded, secondsToWait } from '../../store/access/throttle.ts'
import { DOORKEEPER, memberOf } from '../../store/database/actor.ts'
import type { Database } from '../../store/database/database.ts'
import { isDuplicate } from '../../store/database/database-fault.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, conflict, invalid } from '../refusal.ts'
import type { Asker } from './asker.ts'
import { type Invitation, invite } from './invite.ts'
import { mayLetIn } from './may-let-in.ts'
import type { SignInContext } from './open-session.ts'
import { signInNameFault } from './sign-in-name.ts'

export type NewPerson = {
  /** What they sign in with, for example an email address. */
  readonly signInName: string
  /** What the account is for. */
  readonly label: string
  readonly administers: boolean
}

export type PersonInvited = { readonly person: AccountListed; readonly invitation: Invitation }

/** Makes an account for somebody in the asker's organization, who is invited to choose a password. */
export async function invitePerson(
  context: SignInContext,
  asker: Asker,
  asked: NewPerson,
): Promise<Answer<PersonInvited>> {
  const { organization, role } = asker
  const name = asked.signInName.trim().toLowerCase()
  const fault = signInNameFault(name)
  if (fault) return invalid({ pointer: '/signInName', message: fault })
  const wait = await mayAskForNames(context, asker)
  if (!wait.ok) return wait
  try {
    return await transact(context.database, memberOf(asker), async (tx, within) => {
      const may = await mayLetIn(context, tx, within, asker)
      if (!may.ok) return may
      const id = context.newId()
      await insertAccount(tx, { id, organization, role, label: asked.label, administers: asked.administers })
      const invitation = await nameAndInvite(context, within, { id, name, madeBy: asker.account })
      await recordAccess(tx, asker, {
        id: context.newId(),
        kind: 'invited',
        organization,
        account: id,
        at: context.clock(),
      })
      return ok({ person: (await accountById(tx, organization, id))!, invitation })
    })
  } catch (fault) {
    if (isDuplicate(fault, 'sign_in_name_key')) return nameTaken(context, asker)
    throw fault
  }
}

/** Wrong guesses of one organization at who signs in here, before each further one has to wait. */
const guardedNames = ({ organization }: Asker): Guarded => ({ what: 'taken', which: organization, free: 20 })

export const mayAskForNames = (context: SignInContext, asker: Asker): Promise<Answer<void>> =>
  transact(context.database, DOORKEEPER, async (tx) => {
    const seconds = await secondsToWait(tx, guardedNames(asker), context.clock())
    if (seconds === 0) return ok(undefined)
    return conflict(
      `Your organization has tried many sign-in names that are taken. Wait ${seconds} seconds before the next try.`,
    )
  })

/** The one thing an asker learns of other organizations: that a name is taken. Counted, so that it is learned seldom. */
export async function nameTaken(context: SignInContext, asker: Asker) {
  await transact(context.database, DOORKEEPER, (tx) => beginTry(tx, guardedNames(asker), context.clock()))
  return conflict('That sign-in name is taken. Choose another.')
}

/** What only the door may: nobody writes sign-ins and invitations in their own name. */
export const nameAndInvite = (
  context: SignInContext,
  within: Database,
  { id, name, madeBy }: { readonly id: string; readonly name: string; readonly madeBy: string },
): Promise<Invitation> =>
  transact(within, DOORKEEPER, async (tx) => {
    await freeStaleName(tx, name, context.clock())
    await addSignIn(tx, id, name)
    return invite(tx, context, id, madeBy)
  })
