import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { endInvitations } from '../../store/access/invitations.ts'
import { administratorsHeld, changeAccount } from '../../store/access/people.ts'
import { erasePersonal } from '../../store/access/personal.ts'
import { tokensOf, withdrawTokensOf } from '../../store/access/tokens.ts'
import { DOORKEEPER, memberOf } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, conflict } from '../refusal.ts'
import type { Asker } from './asker.ts'
import { isLastOne, lastOne } from './change-person.ts'
import type { SignInContext } from './open-session.ts'
import { personAsked } from './person-asked.ts'

/** What an account is called whose person was erased. */
export const pseudonym = (account: string): string => `former member ${account.slice(-4)}`

/**
 * Erases what is personal about somebody: the name they signed in by, password, codes, outside identity, sessions,
 * invitations, and what they called their account and tokens. What a county must keep (who entered, decided, handed
 * in) stays under the account's id, which names nobody any more. There is no way back. See docs/access.md.
 */
export const erasePerson = (context: SignInContext, asker: Asker, asked: string): Promise<Answer<void>> =>
  transact(context.database, memberOf(asker), async (tx, within) => {
    const { organization } = asker
    const administrators = await administratorsHeld(tx, organization)
    const found = await personAsked(tx, asker, asked)
    if (!found.ok) return found
    const person = found.value
    if (person.erasedAt !== null) return ok(undefined)
    if (person.id === asker.account)
      return conflict('You cannot erase your own account. Ask another administrator.')
    if (await isLastOne(within, administrators, person)) return lastOne()
    const at = context.clock()
    await withdrawTokensOf(tx, person.id, at)
    const tokens = await tokensOf(tx, person.id)
    await transact(within, DOORKEEPER, async (door) => {
      await endInvitations(door, person.id)
      await erasePersonal(
        door,
        person.id,
        tokens.map(({ id }) => id),
      )
    })
    await changeAccount(tx, person.id, {
      label: pseudonym(person.id),
      administers: false,
      suspendedAt: person.suspendedAt ?? at,
      erasedAt: at,
    })
    const event = { id: context.newId(), kind: 'erased', organization, account: person.id, at } as const
    await recordAccess(tx, asker, event)
    return ok(undefined)
  })
