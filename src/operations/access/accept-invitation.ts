import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { invitationHeld, type OpenInvitation, useInvitation } from '../../store/access/invitations.ts'
import { hashPassword } from '../../store/access/password.ts'
import { endSessionsOf } from '../../store/access/sessions.ts'
import { replacePassword } from '../../store/access/sign-in.ts'
import { forgetTries } from '../../store/access/throttle.ts'
import { tokenHash } from '../../store/access/token.ts'
import { tokensOf, withdrawTokensOf } from '../../store/access/tokens.ts'
import { DOORKEEPER } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, invalid, notFound } from '../refusal.ts'
import type { SignInContext } from './open-session.ts'
import { passwordFault } from './password-rules.ts'
import { guardedName } from './sign-in.ts'

const over = () =>
  notFound('This invitation has expired or was already used. Ask your administrator for a new one.')

/** Whom an invitation is for, while it is good. */
export const readInvitation = (context: SignInContext, secret: string): Promise<Answer<OpenInvitation>> =>
  transact(context.database, DOORKEEPER, async (tx) => {
    const found = await invitationHeld(tx, tokenHash(secret), context.clock())
    return found ? ok(found) : over()
  })

/** The names of the tokens that a new password would end: programs that work by them are told before. */
export const tokensInForce = (context: SignInContext, account: string): Promise<readonly string[]> =>
  transact(context.database, DOORKEEPER, async (tx) =>
    (await tokensOf(tx, account))
      .filter(
        ({ revokedAt, expiresAt }) =>
          revokedAt === null && (expiresAt === null || expiresAt > context.clock()),
      )
      .map(({ name }) => name),
  )

/**
 * Chooses the password that an invitation is for; once. Every session the account had is over, and every token, unless
 * whoever chooses says that they know of them: who lost a password may have lost a token to the same hand.
 */
export async function acceptInvitation(
  context: SignInContext,
  secret: string,
  password: string,
  tokens: 'end' | 'keep' = 'end',
): Promise<Answer<OpenInvitation>> {
  const read = await readInvitation(context, secret)
  if (!read.ok) return read
  const { signInName, label, organizationName } = read.value
  const fault = await passwordFault(password, [signInName, label, organizationName])
  if (fault) return invalid({ pointer: '/password', message: fault })
  const passwordHash = await hashPassword(password)
  return transact(context.database, DOORKEEPER, async (tx) => {
    const at = context.clock()
    // Held now: of two who use it at once the second finds it used.
    const found = await invitationHeld(tx, tokenHash(secret), at)
    if (!found) return over()
    const { id, account, organization, first } = found
    await useInvitation(tx, id, at)
    await replacePassword(tx, account, passwordHash, at)
    await endSessionsOf(tx, account)
    if (tokens === 'end') await withdrawTokensOf(tx, account, at)
    await forgetTries(tx, guardedName(found.signInName))
    const kind = first ? 'joined' : 'password-chosen'
    await recordAccess(
      tx,
      { account },
      { id: context.newId(), kind, organization, account, body: { tokens }, at },
    )
    return ok(found)
  })
}
