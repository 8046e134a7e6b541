import type { Role } from '../database/actor.ts'
import type { Tx } from '../database/database.ts'

/** At the door: nobody reads invitations in their own name. */

type NewInvitation = {
  readonly id: string
  readonly account: string
  readonly hash: Buffer
  readonly madeBy: string | null
  readonly madeAt: Date
  readonly expiresAt: Date
}

/** A new invitation takes the place of those before it. */
export async function insertInvitation(tx: Tx, made: NewInvitation): Promise<void> {
  await endInvitations(tx, made.account)
  await tx
    .insertInto('invitation')
    .values({
      id: made.id,
      account: made.account,
      hash: made.hash,
      made_by: made.madeBy,
      made_at: made.madeAt,
      expires_at: made.expiresAt,
    })
    .execute()
}

export async function endInvitations(tx: Tx, account: string): Promise<void> {
  await tx.deleteFrom('invitation').where('account', '=', account).where('used_at', 'is', null).execute()
}

export type OpenInvitation = {
  readonly id: string
  readonly account: string
  readonly organization: string
  readonly organizationName: string
  readonly role: Role
  readonly label: string
  readonly signInName: string
  /** False for somebody who had a password before. */
  readonly first: boolean
}

/** The invitation with that hash, held until the transaction ends, while it is good. */
export async function invitationHeld(tx: Tx, hash: Buffer, at: Date): Promise<OpenInvitation | undefined> {
  const row = await tx
    .selectFrom('invitation as i')
    .innerJoin('account as a', 'a.id', 'i.account')
    .innerJoin('organization as o', 'o.id', 'a.organization')
    .innerJoin('sign_in as s', 's.account', 'a.id')
    .select([
      'i.id',
      'a.id as account',
      'o.id as organization',
      'o.name as organizationName',
      'a.role',
      'a.label',
      's.name as signInName',
      's.password_hash',
    ])
    .where('i.hash', '=', hash)
    .where('i.used_at', 'is', null)
    .where('i.expires_at', '>', at)
    .where('a.suspended_at', 'is', null)
    .forUpdate('i')
    .executeTakeFirst()
  if (!row) return undefined
  const { password_hash, ...invitation } = row
  return { ...invitation, first: password_hash === null }
}

export async function useInvitation(tx: Tx, id: string, at: Date): Promise<void> {
  await tx.updateTable('invitation').set({ used_at: at }).where('id', '=', id).execute()
}
