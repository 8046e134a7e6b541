import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { listTokens, rotateToken, withdrawToken } from '../../../../operations/access/change-token.ts'
import { issueToken, type Scope } from '../../../../operations/access/issue-token.ts'
import { ALL_ROLES } from '../../../access/require-caller.ts'
import { answered } from '../../../api/answer.ts'
import { label } from '../../../api/people/shapes.ts'
import { tokensPath } from '../addresses.ts'
import { typed } from '../typed.ts'
import { TOKEN_DAYS, tokensView } from './view.ts'

const config = { access: ALL_ROLES, manages: true } as const
const params = z.object({ token: z.guid() })

/** Tokens for programs: made, shown once, replaced, revoked. */
export const tokenPages: FastifyPluginAsyncZod = async (app) => {
  app.get(tokensPath, { config }, async (request, reply) => show(request, reply, null, null))

  app.post(tokensPath, { config }, async (request, reply) => {
    const { context, caller, body } = request
    const name = label.safeParse(typed(body, 'name'))
    const days = TOKEN_DAYS.find((it) => String(it) === typed(body, 'days'))
    const scopes = caller.counties.flatMap((county): Scope[] => {
      const may = typed(body, `may.${county}`)
      return may === 'read' || may === 'write' ? [{ county, may }] : []
    })
    if (!name.success || days === undefined)
      return show(request, reply, null, 'Enter what the token is for and how long it works.')
    if (scopes.length === 0)
      return show(request, reply, null, 'Choose what the token can do in at least one county.')
    const asked = { account: 'own', name: name.data, scopes, manages: false, days }
    const made = answered(await issueToken(context, caller, asked))
    return show(request, reply, made.token, null)
  })

  app.post(`${tokensPath}/:token/rotation`, { config, schema: { params } }, async (request, reply) => {
    const made = answered(await rotateToken(request.context, request.caller, request.params.token, 0))
    return show(request, reply, made.token, null)
  })

  app.post(
    `${tokensPath}/:token/withdrawal`,
    { config, schema: { params } },
    async ({ context, caller, params: { token } }, reply) => {
      answered(await withdrawToken(context, caller, token))
      return reply.redirect(tokensPath, 303)
    },
  )
}

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  token: string | null,
  fault: string | null,
): Promise<FastifyReply> {
  const { context, caller } = request
  const now = context.clock()
  const tokens = (await listTokens(context, caller)).filter(
    ({ revokedAt, expiresAt }) => revokedAt === null && (expiresAt === null || expiresAt > now),
  )
  const body = tokensView({ tokens, own: caller.account, counties: caller.counties, token, fault })
  return reply.page({ title: 'Tokens', body, secret: token !== null }, fault ? 422 : 200)
}
