import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { DOORKEEPER, memberOf } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, conflict } from '../refusal.ts'
import type { Asker } from './asker.ts'
import { type Invitation, invite } from './invite.ts'
import { mayLetIn } from './may-let-in.ts'
import type { SignInContext } from './open-session.ts'
import { personAsked } from './person-asked.ts'

/** A new link to choose a password by, where the first was lost, or the password. Until then the old one goes on. */
export const reinvitePerson = (
  context: SignInContext,
  asker: Asker,
  asked: string,
): Promise<Answer<Invitation>> =>
  transact(context.database, memberOf(asker), async (tx, within) => {
    const found = await personAsked(tx, asker, asked)
    if (!found.ok) return found
    const may = await mayLetIn(context, tx, within, asker)
    if (!may.ok) return may
    const { id: account, signInName, suspendedAt, organization } = found.value
    if (suspendedAt !== null) return conflict('This account is suspended. Restore its access first.')
    if (signInName === null) return conflict('This account has no sign-in name: it works with tokens only.')
    const invitation = await transact(within, DOORKEEPER, (door) =>
      invite(door, context, account, asker.account),
    )
    const event = {
      id: context.newId(),
      kind: 'invited',
      organization,
      account,
      at: context.clock(),
    } as const
    await recordAccess(tx, asker, event)
    return ok(invitation)
  })
