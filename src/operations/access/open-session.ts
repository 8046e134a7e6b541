import { recordAccess } from '../../store/access/access-events.ts'
import { organizationById } from '../../store/access/admissions.ts'
import { secondStepOf } from '../../store/access/second-step.ts'
import { beginSession } from '../../store/access/sessions.ts'
import { newToken, tokenHash } from '../../store/access/token.ts'
import type { SessionStage } from '../../store/database/access-tables.ts'
import type { Role } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import type { OperationContext } from '../context.ts'
import { HALF_SESSION, SESSION_LENGTHS } from './session-lengths.ts'

export type SignInContext = Pick<OperationContext, 'database' | 'clock' | 'newId' | 'quotas'>

export type Entrant = { readonly account: string; readonly organization: string; readonly role: Role }

/** How somebody showed who they are. */
export type Shown = 'password' | 'password-and-code' | 'provider' | 'provider-and-code'

/** A browser's session: `secret` goes into its cookie, this once; only its hash is kept. */
export type SessionBegun = {
  readonly secret: string
  readonly endsAt: Date
  /** What is still to come before the session is good for anything. */
  readonly stage: SessionStage
}

/** Begins a session as far as what was shown goes: all the way, or to the code that is still to come. At the door. */
export async function openSession(
  tx: Tx,
  context: SignInContext,
  entrant: Entrant,
  { shown, browser }: { readonly shown: Shown; readonly browser: string | null },
): Promise<SessionBegun> {
  const { account, organization, role } = entrant
  const at = context.clock()
  const stage = shown.endsWith('-and-code') ? 'full' : await stageFor(tx, entrant)
  const { hours, idleMinutes } = stage === 'full' ? SESSION_LENGTHS[role] : HALF_SESSION
  const secret = newToken()
  const endsAt = new Date(at.getTime() + hours * 3_600_000)
  const hash = tokenHash(secret)
  await beginSession(tx, { hash, account, stage, browser, begunAt: at, endsAt, idleMinutes })
  if (stage === 'full') {
    const kind = 'signed-in'
    await recordAccess(
      tx,
      { account },
      { id: context.newId(), kind, organization, account, body: { shown }, at },
    )
  }
  return { secret, endsAt, stage }
}

async function stageFor(tx: Tx, { account, organization }: Entrant): Promise<SessionStage> {
  const step = await secondStepOf(tx, account)
  if (step?.confirmedAt) return 'second-step'
  return (await organizationById(tx, organization))?.secondStep === 'required' ? 'set-up' : 'full'
}
