import { ok } from '../../base/result.ts'
import { admissionsOf } from '../../store/access/admissions.ts'
import { sessionBegun } from '../../store/access/sessions.ts'
import { DOORKEEPER } from '../../store/database/actor.ts'
import type { Database, Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, notAllowed } from '../refusal.ts'
import type { Asker } from './asker.ts'
import type { SignInContext } from './open-session.ts'

/** How long after somebody showed who they are they may change how they, or others, come in. */
export const RECENT_MINUTES = 15

/**
 * Whether an asker may make a way in: for somebody else, or another for themself. A session has to be of somebody who
 * showed a moment ago who they are, for a browser may be left open, or its cookie be taken. In the asker's transaction.
 */
export async function mayMakeWayIn(
  { clock }: Pick<SignInContext, 'clock'>,
  within: Database,
  { bySession, token }: Pick<Asker, 'bySession' | 'token'>,
): Promise<Answer<void>> {
  if (!bySession) return ok(undefined)
  const begun = await transact(within, DOORKEEPER, (door) => sessionBegun(door, token))
  const since = begun ? clock().getTime() - begun.getTime() : Number.POSITIVE_INFINITY
  if (since <= RECENT_MINUTES * 60_000) return ok(undefined)
  return notAllowed(
    `You signed in more than ${RECENT_MINUTES} minutes ago. Sign in again, and then do this: it changes who can come in.`,
  )
}

/**
 * Whether an asker may let a person in, who may then do all that the organization may: write wherever it is admitted. A
 * token gives no more than it has, so one that may not write in each of these counties lets nobody in.
 */
export async function mayLetIn(
  context: Pick<SignInContext, 'clock'>,
  tx: Tx,
  within: Database,
  asker: Asker,
): Promise<Answer<void>> {
  if (!asker.bySession) {
    const admissions = await admissionsOf(tx, asker.organization)
    const beyond = admissions.find(
      ({ county, withdrawnAt }) => withdrawnAt === null && !asker.writes.includes(county),
    )
    if (beyond)
      return notAllowed(
        `People in your organization may write in ${beyond.county}, and this token may not. A token can’t invite people who may do more than it can.`,
      )
  }
  return mayMakeWayIn(context, within, asker)
}
