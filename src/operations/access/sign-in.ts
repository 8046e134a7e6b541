import { setTimeout as wait } from 'node:timers/promises'
import { err, ok, type Result } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { hashPassword, isPassword, needsRefresh } from '../../store/access/password.ts'
import { endSession } from '../../store/access/sessions.ts'
import { findSignIn, refreshPasswordHash } from '../../store/access/sign-in.ts'
import { beginTry, forgetTries, type Guarded, sweepTries, takeBackTry } from '../../store/access/throttle.ts'
import { tokenHash } from '../../store/access/token.ts'
import { DOORKEEPER } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { openSession, type SessionBegun, type SignInContext } from './open-session.ts'

export type SignInAsked = {
  readonly name: string
  readonly password: string
  /** Where from, in the network: guesses are counted by it too. */
  readonly address: string
  readonly browser: string | null
}

/** Why nobody was let in: told alike whether name or password is wrong, or too much was tried of late. */
export type SignInRefused = { readonly why: 'wrong' } | { readonly why: 'wait'; readonly seconds: number }

export const guardedName = (name: string): Guarded => ({ what: 'name', which: name, free: 5 })
/** Many people may share an address. */
export const guardedAddress = (address: string): Guarded => ({ what: 'address', which: address, free: 30 })

/** An unknown name takes as long to refuse as a wrong password, so that the time does not tell which names there are. */
let nobodys: Promise<string> | undefined

/** Refusals come at these steps alone: what is noted of a name that there is takes a little longer. */
const REFUSED_EVERY_MS = 100

/** By name, told apart without regard to case, and password. Each try counts before it is made. */
export async function signIn(
  context: SignInContext,
  { name, password, address, browser }: SignInAsked,
): Promise<Result<SessionBegun, SignInRefused>> {
  const asked = name.trim().toLowerCase()
  const [byName, byAddress] = [guardedName(asked), guardedAddress(address)]
  const { waits, kept } = await transact(context.database, DOORKEEPER, async (tx) => {
    const at = context.clock()
    const seconds = (await beginTry(tx, byName, at)) || (await beginTry(tx, byAddress, at))
    return { waits: seconds, kept: seconds > 0 ? undefined : await findSignIn(tx, asked) }
  })
  if (waits > 0) return err({ why: 'wait', seconds: waits })
  const begun = performance.now()
  nobodys ??= hashPassword('nobody has this one')
  const right = await isPassword(password, kept?.passwordHash ?? (await nobodys))
  if (!kept?.passwordHash || !right) {
    if (kept) await noteRefusal(context, kept)
    const took = performance.now() - begun
    await wait(Math.ceil(took / REFUSED_EVERY_MS) * REFUSED_EVERY_MS - took)
    return err({ why: 'wrong' })
  }
  const fresh = needsRefresh(kept.passwordHash) ? await hashPassword(password) : undefined
  return transact(context.database, DOORKEEPER, async (tx) => {
    await forgetTries(tx, byName)
    await takeBackTry(tx, byAddress)
    await sweepTries(tx, context.clock())
    if (fresh) await refreshPasswordHash(tx, kept.account, fresh)
    return ok(await openSession(tx, context, kept, { shown: 'password', browser }))
  })
}

const noteRefusal = (
  context: SignInContext,
  { account, organization }: { account: string; organization: string },
) =>
  transact(context.database, DOORKEEPER, (tx) =>
    recordAccess(
      tx,
      { account: null },
      { id: context.newId(), kind: 'sign-in-refused', organization, account, at: context.clock() },
    ),
  )

export const signOut = ({ database }: Pick<SignInContext, 'database'>, secret: string): Promise<void> =>
  endSession(database, tokenHash(secret))
