import { ok } from '../../base/result.ts'
import { hashPassword, isPassword } from '../../store/access/password.ts'
import { beginSession, endSession, findSignIn, noteWrongPassword } from '../../store/access/sign-in.ts'
import { newToken, tokenHash } from '../../store/access/token.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, invalid } from '../refusal.ts'

type Context = Pick<OperationContext, 'database' | 'clock'>

/** A browser's session: `secret` goes into its cookie, this once; only its hash is kept. */
export type SessionBegun = { readonly secret: string; readonly endsAt: Date }

/** A working day; unused for four hours it ends before. */
const SESSION_MS = 12 * 3_600_000

/** An unknown name takes as long to refuse as a wrong password, so that the time does not tell which names there are. */
let nobodys: Promise<string> | undefined

/** Names are told apart without regard to case. Refused alike whether name or password is wrong. */
export async function signIn(
  { database, clock }: Context,
  { name, password }: { readonly name: string; readonly password: string },
): Promise<Answer<SessionBegun>> {
  const asked = name.trim().toLowerCase()
  const kept = await findSignIn(database, asked)
  const now = clock()
  if (kept?.waitUntil && kept.waitUntil > now) {
    const minutes = Math.ceil((kept.waitUntil.getTime() - now.getTime()) / 60_000)
    return conflict(
      `Too many wrong passwords for this name. Try again in ${minutes === 1 ? 'a minute' : `${minutes} minutes`}.`,
    )
  }
  nobodys ??= hashPassword('nobody has this one')
  const right = await isPassword(password, kept?.passwordHash ?? (await nobodys))
  if (!kept || !right) {
    if (kept) await noteWrongPassword(database, asked)
    return invalid({ pointer: '/password', message: 'is not right for this name, or there is no such name' })
  }
  const secret = newToken()
  const endsAt = new Date(now.getTime() + SESSION_MS)
  await beginSession(database, kept.account, tokenHash(secret), endsAt)
  return ok({ secret, endsAt })
}

export const signOut = ({ database }: Context, secret: string): Promise<void> =>
  endSession(database, tokenHash(secret))
