import { err, ok, type Result } from '../../base/result.ts'
import { hashPassword } from '../../store/access/password.ts'
import { endSessionsOf } from '../../store/access/sessions.ts'
import { keepSignIn } from '../../store/access/sign-in.ts'
import { forgetTries } from '../../store/access/throttle.ts'
import type { Database } from '../../store/database/database.ts'
import { administer } from '../../store/database/transact.ts'
import { passwordFault } from './password-rules.ts'
import { guardedName } from './sign-in.ts'
import { signInNameFault } from './sign-in-name.ts'

type SignIn = {
  readonly account: string
  /** Letters, figures and . _ @ + -; told apart without regard to case. */
  readonly name: string
  readonly password: string
}

/** Gives an account a name and password to sign in by, or new ones; every session it had ends. As the owner. */
export async function setPassword(
  database: Database,
  { account, name: written, password }: SignIn,
): Promise<Result<void, string>> {
  const name = written.trim().toLowerCase()
  const nameFault = signInNameFault(name)
  if (nameFault) return err(`the name ${nameFault}`)
  const fault = await passwordFault(password, [name])
  if (fault) return err(`the password ${fault}`)
  const passwordHash = await hashPassword(password)
  await administer(database, async (tx) => {
    await keepSignIn(tx, account, { name, passwordHash })
    await endSessionsOf(tx, account)
    await forgetTries(tx, guardedName(name))
  })
  return ok(undefined)
}
