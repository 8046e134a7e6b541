import { err, ok, type Result } from '../../base/result.ts'
import { hashPassword } from '../../store/access/password.ts'
import { keepSignIn } from '../../store/access/sign-in.ts'
import type { Database } from '../../store/database/database.ts'
import { administer } from '../../store/database/transact.ts'

type SignIn = {
  readonly account: string
  /** Letters, figures and . _ @ + -; told apart without regard to case. */
  readonly name: string
  readonly password: string
  readonly counties: readonly string[]
}

/** Of any kind: length is what makes one hard to guess (NIST SP 800-63B-4, 3.1.1.2, for a password alone; from memory). */
const LEAST = 15
const MOST = 200

/** Gives an account a name and password to sign in by, or new ones; every session it had ends. As the owner. */
export async function setPassword(
  database: Database,
  { account, name: written, password, counties }: SignIn,
): Promise<Result<void, string>> {
  const name = written.trim().toLowerCase()
  if (!/^[a-z0-9][a-z0-9._@+-]{2,79}$/.test(name)) {
    return err(
      'a name to sign in by has 3 to 80 letters, figures or . _ @ + - and begins with a letter or figure',
    )
  }
  if ([...password].length < LEAST) return err(`a password has at least ${LEAST} characters`)
  if (password.length > MOST) return err(`a password has at most ${MOST} characters`)
  const passwordHash = await hashPassword(password)
  await administer(database, (tx) => keepSignIn(tx, account, { name, passwordHash, counties }))
  return ok(undefined)
}
