import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { newToken, tokenHash } from '../../store/access/token.ts'
import {
  expireToken,
  insertToken,
  type TokenListed,
  tokenHeld,
  tokensSeen,
  withdrawToken as withdrawKept,
} from '../../store/access/tokens.ts'
import { memberOf } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, conflict, notFound } from '../refusal.ts'
import type { Asker } from './asker.ts'
import type { TokenIssued } from './issue-token.ts'
import { mayMakeWayIn } from './may-let-in.ts'
import type { SignInContext } from './open-session.ts'

/** The asker's own tokens, or the organization's where it looks after it; those that are over too. */
export const listTokens = (context: SignInContext, asker: Asker): Promise<readonly TokenListed[]> =>
  transact(context.database, memberOf(asker), (tx) => tokensSeen(tx))

/** A revoked token stops working at once. Revoking it again changes nothing. */
export const withdrawToken = (
  context: SignInContext,
  asker: Asker,
  id: string,
): Promise<Answer<TokenListed>> =>
  transact(context.database, memberOf(asker), async (tx) => {
    const token = await tokenHeld(tx, id)
    if (!token) return notFound()
    if (token.revokedAt !== null) return ok(token)
    await withdrawKept(tx, id, context.clock())
    await note(tx, context, asker, 'token-withdrawn', token, {})
    return ok({ ...token, revokedAt: context.clock() })
  })

/**
 * A new token in the place of one, with the same name, scopes and length of life. The old one goes on for so many
 * minutes, for whoever has to change it in several places.
 */
export const rotateToken = (
  context: SignInContext,
  asker: Asker,
  id: string,
  graceMinutes: number,
): Promise<Answer<TokenIssued>> =>
  transact(context.database, memberOf(asker), async (tx, within) => {
    const old = await tokenHeld(tx, id)
    if (!old) return notFound()
    const may = await mayMakeWayIn(context, within, asker)
    if (!may.ok) return may
    const at = context.clock()
    if (old.revokedAt !== null) return conflict('This token is revoked. Issue a new one.')
    if (old.expiresAt !== null && old.expiresAt <= at)
      return conflict('This token has expired. Issue a new one.')
    const beyond = [
      ...old.counties.filter((county) => !asker.counties.includes(county)),
      ...old.writes.filter((county) => !asker.writes.includes(county)),
    ]
    if (beyond.length > 0) return conflict(`This token can do more than you can in ${beyond[0]}.`)
    const ends = new Date(at.getTime() + graceMinutes * 60_000)
    if (graceMinutes === 0) await withdrawKept(tx, id, at)
    else if (old.expiresAt === null || old.expiresAt > ends) await expireToken(tx, id, ends)
    const lifeMs = (old.expiresAt?.getTime() ?? at.getTime()) - old.createdAt.getTime()
    const made = context.newId()
    const token = newToken()
    await insertToken(tx, {
      ...old,
      id: made,
      hash: tokenHash(token),
      issuedBy: asker.account,
      createdAt: at,
      expiresAt: old.expiresAt === null ? null : new Date(at.getTime() + lifeMs),
    })
    await note(tx, context, asker, 'token-rotated', old, { by: made, graceMinutes })
    return ok({ listed: (await tokenHeld(tx, made))!, token })
  })

const note = (
  tx: Tx,
  context: SignInContext,
  asker: Asker,
  kind: 'token-withdrawn' | 'token-rotated',
  { id, account }: TokenListed,
  body: Readonly<Record<string, unknown>>,
) =>
  recordAccess(tx, asker, {
    id: context.newId(),
    kind,
    organization: asker.organization,
    account,
    body: { token: id, ...body },
    at: context.clock(),
  })
