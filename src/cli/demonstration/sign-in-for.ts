import { randomBytes } from 'node:crypto'
import { must } from '../../base/result.ts'
import { setPassword } from '../../operations/access/set-password.ts'
import type { Person } from '../../store/database/actor.ts'
import type { Database } from '../../store/database/database.ts'

export type DemoSignIn = { readonly name: string; readonly password: string }

/** A name and a password to sign in to the pages by, the password new at each start: nothing open is ever left behind. */
export async function signInFor(database: Database, person: Person, name: string): Promise<DemoSignIn> {
  const password = randomBytes(12).toString('base64url')
  must(await setPassword(database, { account: person.account, name, password }))
  return { name, password }
}
