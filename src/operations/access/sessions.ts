import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { endSessionById, openSessions, type SessionListed } from '../../store/access/sessions.ts'
import { memberOf } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, notFound } from '../refusal.ts'
import type { Asker } from './asker.ts'
import type { SignInContext } from './open-session.ts'

/** Where the asker is signed in. */
export const listSessions = (context: SignInContext, asker: Asker): Promise<readonly SessionListed[]> =>
  transact(context.database, memberOf(asker), (tx) => openSessions(tx, asker.account))

/** Ends one of the asker's own sessions, wherever that is. */
export const endOwnSession = (context: SignInContext, asker: Asker, id: string): Promise<Answer<void>> =>
  transact(context.database, memberOf(asker), async (tx) => {
    if (!(await endSessionById(tx, asker.account, id))) return notFound()
    const { account, organization } = asker
    const event = {
      id: context.newId(),
      kind: 'session-ended',
      organization,
      account,
      at: context.clock(),
    } as const
    await recordAccess(tx, asker, event)
    return ok(undefined)
  })
