import { z } from 'zod'
import type { Scope } from '../../../operations/access/issue-token.ts'
import type { TokenListed } from '../../../store/access/tokens.ts'
import { id, instant } from '../shapes/basics.ts'

export const scope = z
  .object({
    county: z
      .string()
      .max(40)
      .meta({ examples: ['quillback'] }),
    may: z.enum(['read', 'write']).meta({ description: 'Write includes read' }),
  })
  .meta({ id: 'TokenScope' })

export const token = z
  .object({
    id,
    account: id.meta({ description: 'Whose it is' }),
    name: z.string().meta({ examples: ['field tablets'] }),
    scopes: z.array(scope),
    manages: z.boolean().meta({ description: 'Can also manage people, tokens and sessions' }),
    createdAt: instant,
    expiresAt: instant.nullable(),
    withdrawnAt: instant.nullable(),
    lastUsedAt: instant.nullable().meta({ description: 'To the minute' }),
  })
  .meta({ id: 'Token', description: 'A token without its secret, which is shown once when it is made' })

export const presentToken = (it: TokenListed): z.output<typeof token> => ({
  id: it.id,
  account: it.account,
  name: it.name,
  scopes: scopesOf(it),
  manages: it.manages,
  createdAt: it.createdAt.toISOString(),
  expiresAt: it.expiresAt?.toISOString() ?? null,
  withdrawnAt: it.revokedAt?.toISOString() ?? null,
  lastUsedAt: it.lastUsedAt?.toISOString() ?? null,
})

const scopesOf = ({ counties, writes }: TokenListed): Scope[] =>
  counties.map((county) => ({ county, may: writes.includes(county) ? 'write' : 'read' }))

export const issued = z
  .object({
    token,
    secret: z.string().meta({
      description: 'The token itself, shown only once: `Authorization: Bearer` and this',
      examples: ['asfound_…'],
    }),
  })
  .meta({ id: 'TokenIssued' })
