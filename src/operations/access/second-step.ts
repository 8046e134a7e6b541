import { invariant } from '../../base/invariant.ts'
import { err, ok, type Result } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import {
  confirmSecret,
  offerSecret,
  replaceRecoveryCodes,
  secondStepOf,
  takeStep,
  useRecoveryCode,
} from '../../store/access/second-step.ts'
import { endSession, findOpenSession, type OpenSession } from '../../store/access/sessions.ts'
import { signInName } from '../../store/access/sign-in.ts'
import { beginTry, forgetTries, type Guarded } from '../../store/access/throttle.ts'
import { tokenHash } from '../../store/access/token.ts'
import type { Vault } from '../../store/access/vault.ts'
import { DOORKEEPER } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { mayMakeWayIn } from './may-let-in.ts'
import { newSecret, secretAddress, stepOfCode } from './one-time-code.ts'
import { openSession, type SessionBegun, type SignInContext } from './open-session.ts'
import { newRecoveryCodes, recoveryHash } from './recovery-codes.ts'
import type { SignInRefused } from './sign-in.ts'

export type SecondStepContext = SignInContext & { readonly vault: Vault }

/** Six figures are soon tried out: five wrong ones, then waits. */
const guardedCode = (account: string): Guarded => ({ what: 'code', which: account, free: 5 })
const purposeOf = (account: string): string => `one-time codes of ${account}`

/** What an authenticator is set up with; until a code of it was given it may be asked for again. */
export type Offered = { readonly secret: string; readonly address: string }

/** Undefined where one is set up already. */
export const offerSecondStep = (context: SecondStepContext, account: string): Promise<Offered | undefined> =>
  transact(context.database, DOORKEEPER, async (tx) => {
    const found = await secondStepOf(tx, account)
    if (found?.confirmedAt) return undefined
    const kept = found && context.vault.open(found.sealedSecret, purposeOf(account))
    const secret = kept ?? newSecret()
    if (kept === undefined) {
      const offered = await offerSecret(tx, account, context.vault.seal(secret, purposeOf(account)))
      if (!offered) return undefined
    }
    return { secret, address: secretAddress(secret, (await signInName(tx, account)) ?? 'account') }
  })

export type SetUp = {
  /** Shown this once. */
  readonly recoveryCodes: readonly string[]
  /** In place of a session that waited for this. */
  readonly session: SessionBegun | null
}

/** Turns two-step sign-in on with a first code. A session that waited for it continues as a new one. */
export async function confirmSecondStep(
  context: SecondStepContext,
  { caller, stage }: Pick<OpenSession, 'caller' | 'stage'>,
  sessionSecret: string,
  code: string,
  browser: string | null,
): Promise<Result<SetUp, SignInRefused | { readonly why: 'not-recent' }>> {
  const { account, organization } = caller
  // Else a browser left open, or its cookie, locks its owner out for good. One that waits for this was begun just now.
  if (stage === 'full' && !(await mayMakeWayIn(context, context.database, caller)).ok)
    return err({ why: 'not-recent' })
  return withTry(context, account, async (tx) => {
    const found = await secondStepOf(tx, account)
    if (!found || found.confirmedAt || !(await isCode(tx, context, account, found.sealedSecret, code))) {
      return undefined
    }
    const at = context.clock()
    await confirmSecret(tx, account, at)
    const recoveryCodes = newRecoveryCodes()
    await replaceRecoveryCodes(tx, account, recoveryCodes.map(recoveryHash))
    const kind = 'second-step-set-up'
    await recordAccess(tx, { account }, { id: context.newId(), kind, organization, account, at })
    if (stage === 'full') return { recoveryCodes, session: null }
    const session = await openSession(tx, context, caller, { shown: 'password-and-code', browser })
    return { recoveryCodes, session }
  }).then(async (done) => {
    if (done.ok && done.value.session) await endSession(context.database, tokenHash(sessionSecret))
    return done
  })
}

/** A code of the authenticator, or a recovery code, after the password: the session goes on as a new one. */
export async function giveCode(
  context: SecondStepContext,
  sessionSecret: string,
  code: string,
  browser: string | null,
): Promise<Result<SessionBegun, SignInRefused | { readonly why: 'over' }>> {
  const half = await findOpenSession(context.database, tokenHash(sessionSecret))
  if (half?.stage !== 'second-step') return err({ why: 'over' })
  const { account, organization } = half.caller
  const begun = await withTry(context, account, async (tx) => {
    const found = await secondStepOf(tx, account)
    invariant(found, 'a session waits for a code of two-step sign-in that is on')
    const at = context.clock()
    if (!(await isCode(tx, context, account, found.sealedSecret, code))) {
      if (!(await useRecoveryCode(tx, account, recoveryHash(code), at))) return undefined
      const kind = 'recovery-code-used'
      await recordAccess(tx, { account }, { id: context.newId(), kind, organization, account, at })
    }
    return openSession(tx, context, half.caller, { shown: 'password-and-code', browser })
  })
  if (begun.ok) await endSession(context.database, tokenHash(sessionSecret))
  return begun
}

/** A code is good once: whoever looked over a shoulder comes too late. */
async function isCode(
  tx: Tx,
  { vault, clock }: SecondStepContext,
  account: string,
  sealed: Buffer,
  code: string,
): Promise<boolean> {
  const secret = vault.open(sealed, purposeOf(account))
  const step = secret === undefined ? undefined : stepOfCode(secret, code, clock())
  return step !== undefined && takeStep(tx, account, step)
}

/** Counts the try in a transaction of its own, which stays whatever becomes of the rest. */
async function withTry<T>(
  context: SecondStepContext,
  account: string,
  work: (tx: Tx) => Promise<T | undefined>,
): Promise<Result<T, SignInRefused>> {
  const guarded = guardedCode(account)
  const seconds = await transact(context.database, DOORKEEPER, (tx) => beginTry(tx, guarded, context.clock()))
  if (seconds > 0) return err({ why: 'wait', seconds })
  return transact(context.database, DOORKEEPER, async (tx) => {
    const done = await work(tx)
    if (done === undefined) return err({ why: 'wrong' })
    await forgetTries(tx, guarded)
    return ok(done)
  })
}
