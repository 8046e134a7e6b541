import type { Actor } from '../database/actor.ts'
import type { Tx } from '../database/database.ts'

/** What can happen to accounts, tokens and sessions, and to whom an organization is admitted. */
export const ACCESS_EVENTS = [
  'invited',
  'joined',
  'password-chosen',
  'signed-in',
  'sign-in-refused',
  'signed-out',
  'session-ended',
  'second-step-set-up',
  'second-step-taken-off',
  'recovery-code-used',
  'outside-identity-bound',
  'administration-given',
  'administration-taken',
  'suspended',
  'let-back-in',
  'token-issued',
  'token-rotated',
  'token-withdrawn',
  'organization-admitted',
  'admission-withdrawn',
  'data-exported',
  'erased',
] as const
export type AccessEventKind = (typeof ACCESS_EVENTS)[number]

export type AccessEvent = {
  readonly id: string
  readonly kind: AccessEventKind
  readonly organization: string
  /** About whom. */
  readonly account: string | null
  readonly body?: Readonly<Record<string, unknown>>
  readonly at: Date
}

/** Adds to what happened. Never holds a token, a password, a network address or a name. */
export async function recordAccess(tx: Tx, by: Pick<Actor, 'account'>, event: AccessEvent): Promise<void> {
  const { id, kind, organization, account, body = {}, at } = event
  await tx
    .insertInto('access_event')
    .values({
      id,
      kind,
      organization,
      account,
      made_by: by.account,
      body: JSON.stringify(body),
      happened_at: at,
    })
    .execute()
}

export type AccessEventRead = {
  readonly kind: AccessEventKind
  readonly account: string | null
  readonly madeBy: string | null
  readonly body: unknown
  readonly at: Date
}

/** What happened to an account, the newest first; as far as the asker may see it. */
export async function eventsOfAccount(
  tx: Tx,
  account: string,
  most: number,
): Promise<readonly AccessEventRead[]> {
  const rows = await tx
    .selectFrom('access_event')
    .select(['kind', 'account', 'made_by as madeBy', 'body', 'happened_at as at'])
    .where('account', '=', account)
    .orderBy('id', 'desc')
    .limit(most)
    .execute()
  return rows.map((row) => ({ ...row, kind: row.kind as AccessEventKind }))
}
