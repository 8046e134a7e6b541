import type { Tx } from '../database/database.ts'

export type TokenListed = {
  readonly id: string
  readonly account: string
  readonly name: string
  readonly counties: readonly string[]
  readonly writes: readonly string[]
  readonly manages: boolean
  readonly createdAt: Date
  readonly expiresAt: Date | null
  readonly revokedAt: Date | null
  /** To the minute. */
  readonly lastUsedAt: Date | null
}

const tokens = (tx: Tx) =>
  tx
    .selectFrom('access_token')
    .select([
      'id',
      'account',
      'name',
      'counties',
      'writes',
      'manages',
      'created_at as createdAt',
      'expires_at as expiresAt',
      'revoked_at as revokedAt',
      'last_used_at as lastUsedAt',
    ])

/** The tokens that the asker may see: its own; an administrator all of its organization. The newest first. */
export const tokensSeen = (tx: Tx): Promise<readonly TokenListed[]> =>
  tokens(tx).orderBy('id', 'desc').execute()

export const tokensOf = (tx: Tx, account: string): Promise<readonly TokenListed[]> =>
  tokens(tx).where('account', '=', account).orderBy('id', 'desc').execute()

/** One of them, held until the transaction ends. */
export const tokenHeld = (tx: Tx, id: string): Promise<TokenListed | undefined> =>
  tokens(tx).where('id', '=', id).forUpdate().executeTakeFirst()

type NewToken = Pick<
  TokenListed,
  'id' | 'account' | 'name' | 'counties' | 'writes' | 'manages' | 'createdAt' | 'expiresAt'
> & { readonly hash: Buffer; readonly issuedBy: string }

export async function insertToken(tx: Tx, made: NewToken): Promise<void> {
  await tx
    .insertInto('access_token')
    .values({
      id: made.id,
      account: made.account,
      name: made.name,
      hash: made.hash,
      counties: [...made.counties],
      writes: [...made.writes],
      manages: made.manages,
      issued_by: made.issuedBy,
      created_at: made.createdAt,
      expires_at: made.expiresAt,
    })
    .execute()
}

export async function withdrawToken(tx: Tx, id: string, at: Date): Promise<void> {
  await tx.updateTable('access_token').set({ revoked_at: at }).where('id', '=', id).execute()
}

export async function expireToken(tx: Tx, id: string, at: Date): Promise<void> {
  await tx.updateTable('access_token').set({ expires_at: at }).where('id', '=', id).execute()
}

export async function withdrawTokensOf(tx: Tx, account: string, at: Date): Promise<void> {
  await tx
    .updateTable('access_token')
    .set({ revoked_at: at })
    .where('account', '=', account)
    .where('revoked_at', 'is', null)
    .execute()
}
