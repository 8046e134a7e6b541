import { insertInvitation } from '../../store/access/invitations.ts'
import { newToken, tokenHash } from '../../store/access/token.ts'
import type { Tx } from '../../store/database/database.ts'
import type { SignInContext } from './open-session.ts'

/** How long somebody has to choose a password by an invitation. */
export const INVITATION_DAYS = 7

/** `secret` is the part of the link that lets one in: shown this once, and only its hash is kept. */
export type Invitation = { readonly secret: string; readonly expiresAt: Date }

/** Invites an account to choose a password, the first or a new one. Earlier invitations are over. At the door. */
export async function invite(
  tx: Tx,
  context: SignInContext,
  account: string,
  madeBy: string | null,
): Promise<Invitation> {
  const madeAt = context.clock()
  const expiresAt = new Date(madeAt.getTime() + INVITATION_DAYS * 86_400_000)
  const secret = newToken()
  await insertInvitation(tx, {
    id: context.newId(),
    account,
    hash: tokenHash(secret),
    madeBy,
    madeAt,
    expiresAt,
  })
  return { secret, expiresAt }
}
