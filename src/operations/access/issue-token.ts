import { ok } from '../../base/result.ts'
import { recordAccess } from '../../store/access/access-events.ts'
import { newToken, tokenHash } from '../../store/access/token.ts'
import { insertToken, type TokenListed, tokenHeld } from '../../store/access/tokens.ts'
import { memberOf } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { mayHaveAnother } from '../quotas.ts'
import { type Answer, conflict, invalid } from '../refusal.ts'
import type { Asker } from './asker.ts'
import { mayMakeWayIn } from './may-let-in.ts'
import type { SignInContext } from './open-session.ts'
import { personAsked } from './person-asked.ts'

export type Scope = { readonly county: string; readonly may: 'read' | 'write' }

export type NewToken = {
  /** Whose; the asker's own, or another's of the organization that the asker looks after. */
  readonly account: string
  readonly name: string
  readonly scopes: readonly Scope[]
  readonly manages: boolean
  readonly days: number
}

/** `token` is shown this once; only its hash is kept. */
export type TokenIssued = { readonly listed: TokenListed; readonly token: string }

/** Issues a token that may no more than the asker may with what it came in by. */
export const issueToken = (
  context: SignInContext,
  asker: Asker,
  asked: NewToken,
): Promise<Answer<TokenIssued>> =>
  transact(context.database, memberOf(asker), async (tx, within) => {
    const may = await mayMakeWayIn(context, within, asker)
    if (!may.ok) return may
    const found = await personAsked(tx, asker, asked.account)
    if (!found.ok) return found
    const person = found.value
    if (person.suspendedAt !== null) return conflict('This account is suspended. Restore its access first.')
    const issues = asked.scopes.flatMap(({ county, may }, at) => {
      const own = may === 'write' ? asker.writes : asker.counties
      return own.includes(county)
        ? []
        : [{ pointer: `/scopes/${at}`, message: `you cannot ${may} in ${county} yourself` }]
    })
    if (issues.length > 0) return invalid(...issues)
    const room = await mayHaveAnother(tx, context, 'tokens')
    if (!room.ok) return room
    const createdAt = context.clock()
    const id = context.newId()
    const token = newToken()
    const counties = [...new Set(asked.scopes.map(({ county }) => county))].sort()
    const writes = counties.filter((county) =>
      asked.scopes.some((scope) => scope.county === county && scope.may === 'write'),
    )
    await insertToken(tx, {
      id,
      account: person.id,
      name: asked.name,
      hash: tokenHash(token),
      counties,
      writes,
      manages: asked.manages,
      issuedBy: asker.account,
      createdAt,
      expiresAt: new Date(createdAt.getTime() + asked.days * 86_400_000),
    })
    await recordAccess(tx, asker, {
      id: context.newId(),
      kind: 'token-issued',
      organization: asker.organization,
      account: person.id,
      body: { token: id, counties, writes, manages: asked.manages },
      at: createdAt,
    })
    return ok({ listed: (await tokenHeld(tx, id))!, token })
  })
