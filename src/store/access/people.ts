import { sql } from 'kysely'
import type { Role } from '../database/actor.ts'
import type { Tx } from '../database/database.ts'

export type AccountListed = {
  readonly id: string
  readonly organization: string
  readonly role: Role
  /** What the account is for. */
  readonly label: string
  readonly administers: boolean
  readonly suspendedAt: Date | null
  readonly erasedAt: Date | null
  readonly createdAt: Date
  /** The name it signs in by; null where it does not, as a program's. */
  readonly signInName: string | null
  /** Whether a password was chosen. */
  readonly hasPassword: boolean
  readonly hasSecondStep: boolean
}

const accounts = (tx: Tx) =>
  tx
    .selectFrom('account as a')
    .leftJoin('sign_in as s', 's.account', 'a.id')
    .leftJoin('second_step as t', (join) =>
      join.onRef('t.account', '=', 'a.id').on('t.confirmed_at', 'is not', null),
    )
    .select((eb) => [
      'a.id',
      'a.organization',
      'a.role',
      'a.label',
      'a.administers',
      'a.suspended_at as suspendedAt',
      'a.erased_at as erasedAt',
      'a.created_at as createdAt',
      's.name as signInName',
      eb('s.password_hash', 'is not', null).$castTo<boolean>().as('hasPassword'),
      eb('t.account', 'is not', null).$castTo<boolean>().as('hasSecondStep'),
    ])

/** An organization's accounts that the asker may see, in the order they were made. */
export const accountsOf = (tx: Tx, organization: string): Promise<readonly AccountListed[]> =>
  accounts(tx).where('a.organization', '=', organization).orderBy('a.id').execute()

/** One of the organization's accounts. */
export const accountById = (tx: Tx, organization: string, id: string): Promise<AccountListed | undefined> =>
  accounts(tx).where('a.organization', '=', organization).where('a.id', '=', id).executeTakeFirst()

type NewAccount = Pick<AccountListed, 'id' | 'organization' | 'role' | 'label' | 'administers'>

export async function insertAccount(tx: Tx, account: NewAccount): Promise<void> {
  await tx.insertInto('account').values(account).execute()
}

type Changes = {
  readonly label?: string
  readonly administers?: boolean
  readonly suspendedAt?: Date | null
  readonly erasedAt?: Date
}

export async function changeAccount(tx: Tx, id: string, changes: Changes): Promise<void> {
  const { label, administers, suspendedAt, erasedAt } = changes
  await tx
    .updateTable('account')
    .set({
      ...(label === undefined ? {} : { label }),
      ...(administers === undefined ? {} : { administers }),
      ...(suspendedAt === undefined ? {} : { suspended_at: suspendedAt }),
      ...(erasedAt === undefined ? {} : { erased_at: erasedAt }),
    })
    .where('id', '=', id)
    .execute()
}

/**
 * Those of the accounts that somebody can come in by: with a password, known to a provider of their county, or with a token
 * for managing that is good. Who was invited and never came is none of them. At the door.
 */
export async function joinedAmong(tx: Tx, ids: readonly string[]): Promise<readonly string[]> {
  if (ids.length === 0) return []
  const rows = await tx
    .selectFrom('account as a')
    .select('a.id')
    .where('a.id', 'in', [...ids])
    .where((eb) =>
      eb.or([
        eb.exists(
          eb
            .selectFrom('sign_in as s')
            .select('s.account')
            .whereRef('s.account', '=', 'a.id')
            .where('s.password_hash', 'is not', null),
        ),
        eb.exists(
          eb.selectFrom('outside_identity as o').select('o.account').whereRef('o.account', '=', 'a.id'),
        ),
        eb.exists(
          eb
            .selectFrom('access_token as t')
            .select('t.id')
            .whereRef('t.account', '=', 'a.id')
            .where('t.manages', '=', true)
            .where('t.revoked_at', 'is', null)
            .where((at) =>
              at.or([at('t.expires_at', 'is', null), at('t.expires_at', '>', sql<Date>`now()`)]),
            ),
        ),
      ]),
    )
    .execute()
  return rows.map(({ id }) => id)
}

/** Holds the organization's administrators until the transaction ends: those that are not suspended. */
export async function administratorsHeld(tx: Tx, organization: string): Promise<readonly string[]> {
  const rows = await tx
    .selectFrom('account')
    .select('id')
    .where('organization', '=', organization)
    .where('administers', '=', true)
    .where('suspended_at', 'is', null)
    .orderBy('id')
    .forUpdate()
    .execute()
  return rows.map(({ id }) => id)
}
