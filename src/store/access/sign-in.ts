import type { Role } from '../database/actor.ts'
import type { Tx } from '../database/database.ts'

export type KeptSignIn = {
  readonly account: string
  readonly organization: string
  /** Null where the account signs in elsewhere only. */
  readonly passwordHash: string | null
  readonly role: Role
  readonly label: string
}

/** Who signs in by that name (lower case); undefined where nobody does, or the account is suspended. At the door. */
export async function findSignIn(tx: Tx, name: string): Promise<KeptSignIn | undefined> {
  return tx
    .selectFrom('sign_in as s')
    .innerJoin('account as a', 'a.id', 's.account')
    .select(['a.id as account', 'a.organization', 'a.role', 's.password_hash as passwordHash', 'a.label'])
    .where('s.name', '=', name)
    .where('a.suspended_at', 'is', null)
    .executeTakeFirst()
}

/** The name that an account signs in by. */
export async function signInName(tx: Tx, account: string): Promise<string | undefined> {
  const row = await tx.selectFrom('sign_in').select('name').where('account', '=', account).executeTakeFirst()
  return row?.name
}

/** Names an account for signing in; its password is chosen later, or never. */
export async function addSignIn(tx: Tx, account: string, name: string): Promise<void> {
  await tx.insertInto('sign_in').values({ account, name, password_hash: null }).execute()
}

/**
 * Frees a name that nobody came in by: its account was invited, never joined, and its last link is over. Whoever the name
 * is really of is kept from it by nobody who wrote it down first.
 */
export async function freeStaleName(tx: Tx, name: string, at: Date): Promise<void> {
  await tx
    .deleteFrom('sign_in')
    .where('name', '=', name)
    .where('password_hash', 'is', null)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('invitation')
            .select('invitation.id')
            .whereRef('invitation.account', '=', 'sign_in.account')
            .where('used_at', 'is', null)
            .where('expires_at', '>', at),
        ),
      ),
    )
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('outside_identity')
            .select('outside_identity.subject')
            .whereRef('outside_identity.account', '=', 'sign_in.account'),
        ),
      ),
    )
    .execute()
}

export async function replacePassword(
  tx: Tx,
  account: string,
  passwordHash: string,
  at: Date,
): Promise<void> {
  await tx
    .updateTable('sign_in')
    .set({ password_hash: passwordHash, changed_at: at })
    .where('account', '=', account)
    .execute()
}

/** A hash with newer costs for the same password; nothing else changes. */
export async function refreshPasswordHash(tx: Tx, account: string, passwordHash: string): Promise<void> {
  await tx
    .updateTable('sign_in')
    .set({ password_hash: passwordHash })
    .where('account', '=', account)
    .execute()
}

/** Gives an account a sign-in name and a password, in place of those it had. */
export async function keepSignIn(
  tx: Tx,
  account: string,
  { name, passwordHash }: { readonly name: string; readonly passwordHash: string },
): Promise<void> {
  const row = { name, password_hash: passwordHash, changed_at: new Date() }
  await tx
    .insertInto('sign_in')
    .values({ account, ...row })
    .onConflict((conflict) => conflict.column('account').doUpdateSet(row))
    .execute()
}
