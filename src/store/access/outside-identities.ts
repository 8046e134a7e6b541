import type { Role } from '../database/actor.ts'
import type { Tx } from '../database/database.ts'

/** At the door. */

export type Outside = { readonly issuer: string; readonly subject: string }
export type Bound = { readonly account: string; readonly organization: string; readonly role: Role }

/** Whose account an outside identity is bound to, and whether it may come in. */
export async function accountBoundTo(
  tx: Tx,
  { issuer, subject }: Outside,
): Promise<(Bound & { readonly suspended: boolean }) | undefined> {
  const row = await tx
    .selectFrom('outside_identity as i')
    .innerJoin('account as a', 'a.id', 'i.account')
    .select(['a.id as account', 'a.organization', 'a.role', 'a.suspended_at'])
    .where('i.issuer', '=', issuer)
    .where('i.subject', '=', subject)
    .executeTakeFirst()
  if (!row) return undefined
  const { suspended_at, ...bound } = row
  return { ...bound, suspended: suspended_at !== null }
}

export async function bindOutside(
  tx: Tx,
  account: string,
  { issuer, subject }: Outside,
  at: Date,
): Promise<void> {
  await tx.insertInto('outside_identity').values({ issuer, subject, account, bound_at: at }).execute()
}

/** Whether an account has another identity at that issuer already. */
export async function isBound(tx: Tx, account: string, issuer: string): Promise<boolean> {
  const row = await tx
    .selectFrom('outside_identity')
    .select('account')
    .where('account', '=', account)
    .where('issuer', '=', issuer)
    .executeTakeFirst()
  return row !== undefined
}

export type OutsideBound = Outside & { readonly boundAt: Date }

export const outsideIdentitiesOf = (tx: Tx, account: string): Promise<readonly OutsideBound[]> =>
  tx
    .selectFrom('outside_identity')
    .select(['issuer', 'subject', 'bound_at as boundAt'])
    .where('account', '=', account)
    .orderBy('issuer')
    .execute()
