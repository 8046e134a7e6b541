import { err, ok, type Result } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { organizationById } from '../../store/access/admissions.ts'
import { endInvitations } from '../../store/access/invitations.ts'
import { hashPassword, isPassword } from '../../store/access/password.ts'
import { endSessionsOf } from '../../store/access/sessions.ts'
import { findSignIn, replacePassword, signInName } from '../../store/access/sign-in.ts'
import { beginTry, forgetTries } from '../../store/access/throttle.ts'
import { DOORKEEPER } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import type { Asker } from './asker.ts'
import type { SignInContext } from './open-session.ts'
import { passwordFault } from './password-rules.ts'
import { guardedName, type SignInRefused } from './sign-in.ts'

type Refused = SignInRefused | { readonly why: 'unfit'; readonly says: string }

/** Whether the asker knows their own password: asked again before anything that would keep them out. */
export async function confirmPassword(
  context: SignInContext,
  { account }: Asker,
  password: string,
): Promise<Result<{ readonly name: string }, SignInRefused>> {
  const { seconds, kept, name } = await transact(context.database, DOORKEEPER, async (tx) => {
    const own = (await signInName(tx, account)) ?? ''
    const wait = await beginTry(tx, guardedName(own), context.clock())
    return { seconds: wait, kept: await findSignIn(tx, own), name: own }
  })
  if (seconds > 0) return err({ why: 'wait', seconds })
  if (!kept?.passwordHash || !(await isPassword(password, kept.passwordHash))) return err({ why: 'wrong' })
  await transact(context.database, DOORKEEPER, (tx) => forgetTries(tx, guardedName(name)))
  return ok({ name })
}

/** A new password in place of the asker's own; every other session of theirs is over. */
export async function changePassword(
  context: SignInContext,
  asker: Asker,
  { current, wanted }: { readonly current: string; readonly wanted: string },
): Promise<Result<void, Refused>> {
  const known = await confirmPassword(context, asker, current)
  if (!known.ok) return known
  const { account, organization } = asker
  const about = await transact(context.database, DOORKEEPER, (tx) => organizationById(tx, organization))
  const fault = await passwordFault(wanted, [known.value.name, about?.name ?? ''])
  if (fault) return err({ why: 'unfit', says: fault })
  const passwordHash = await hashPassword(wanted)
  await transact(context.database, DOORKEEPER, async (tx) => {
    const at = context.clock()
    await replacePassword(tx, account, passwordHash, at)
    await endSessionsOf(tx, account, asker.bySession ? asker.token : null)
    await endInvitations(tx, account)
    const event = { id: context.newId(), kind: 'password-chosen', organization, account, at } as const
    await recordAccess(tx, asker, event)
  })
  return ok(undefined)
}
