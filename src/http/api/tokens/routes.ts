import type { FastifyReply } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { listTokens, rotateToken, withdrawToken } from '../../../operations/access/change-token.ts'
import { issueToken, type TokenIssued } from '../../../operations/access/issue-token.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { label } from '../people/shapes.ts'
import { issued, presentToken, scope, token } from './shapes.ts'

const tags = ['Tokens']
const own = { access: ALL_ROLES, manages: true } as const
const tokenPath = z.object({ token: z.guid('is not an id') })

/** A token that is forgotten somewhere ends by itself. */
const USUAL_DAYS = 90
const MOST_DAYS = 366
/** A day, for whoever has to change it in several places. */
const MOST_GRACE_MINUTES = 1_440

const present = (reply: FastifyReply, { listed, token: secret }: TokenIssued) => {
  reply.code(201).header('cache-control', 'no-store')
  return { token: presentToken(listed), secret }
}

export const tokens: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/tokens',
    {
      config: own,
      schema: {
        summary: 'Your tokens; all of the organization’s if you administer it',
        tags,
        operationId: 'listTokens',
        response: { 200: z.object({ items: z.array(token) }) },
      },
    },
    async ({ context, caller }) => ({ items: (await listTokens(context, caller)).map(presentToken) }),
  )

  app.post(
    '/tokens',
    {
      config: own,
      schema: {
        summary: 'Issue a token',
        description:
          'It can do no more than you can. There is no Idempotency-Key, so that the token is never stored. A repeat makes ' +
          'another token, which you can revoke.',
        tags,
        operationId: 'issueToken',
        body: z
          .object({
            name: label.meta({ description: 'What it is for', examples: ['field tablets'] }),
            account: z
              .union([z.literal('own'), z.guid('is not an id, nor `own`')])
              .default('own')
              .meta({ description: 'Whose: yours, or another person’s in the organization you administer' }),
            scopes: z.array(scope).max(200, 'at most 200'),
            manages: z.boolean().default(false),
            days: z
              .int()
              .min(1, 'at least one day')
              .max(MOST_DAYS, `at most ${MOST_DAYS}`)
              .default(USUAL_DAYS),
          })
          .meta({
            id: 'NewToken',
            examples: [{ name: 'field tablets', scopes: [{ county: 'quillback', may: 'write' }], days: 90 }],
          }),
        response: { 201: issued },
      },
    },
    async ({ context, caller, body }, reply) =>
      present(reply, answered(await issueToken(context, caller, body))),
  )

  app.post(
    '/tokens/:token/rotation',
    {
      config: own,
      schema: {
        summary: 'Replace a token',
        description: 'Same name, scopes and lifetime. The old token works for another `graceMinutes`.',
        tags,
        operationId: 'rotateToken',
        params: tokenPath,
        body: z
          .object({
            graceMinutes: z.int().min(0).max(MOST_GRACE_MINUTES, `at most ${MOST_GRACE_MINUTES}`).default(0),
          })
          .meta({ id: 'TokenRotation', examples: [{ graceMinutes: 60 }] }),
        response: { 201: issued },
      },
    },
    async ({ context, caller, params, body }, reply) =>
      present(reply, answered(await rotateToken(context, caller, params.token, body.graceMinutes))),
  )

  app.delete(
    '/tokens/:token',
    {
      config: own,
      schema: {
        summary: 'Revoke a token',
        tags,
        operationId: 'withdrawToken',
        params: tokenPath,
        response: { 200: token },
      },
    },
    async ({ context, caller, params }) =>
      presentToken(answered(await withdrawToken(context, caller, params.token))),
  )
}
