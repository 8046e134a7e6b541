import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { organizationById } from '../../store/access/admissions.ts'
import { removeSecondStep } from '../../store/access/second-step.ts'
import { DOORKEEPER } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, notAllowed } from '../refusal.ts'
import type { Asker } from './asker.ts'
import type { SignInContext } from './open-session.ts'

/** Turns off the caller's two-step sign-in; its password was checked again before. */
export const takeOffOwnSecondStep = (
  context: SignInContext,
  { account, organization }: Asker,
): Promise<Answer<void>> =>
  transact(context.database, DOORKEEPER, async (tx) => {
    const own = await organizationById(tx, organization)
    if (own?.secondStep === 'required') return notAllowed('Your organization requires two-step sign-in.')
    await removeSecondStep(tx, account)
    const kind = 'second-step-taken-off'
    await recordAccess(
      tx,
      { account },
      { id: context.newId(), kind, organization, account, at: context.clock() },
    )
    return ok(undefined)
  })
