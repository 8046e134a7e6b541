import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { endOwnSession, listSessions } from '../../../operations/access/sessions.ts'
import { ALL_ROLES } from '../../access/require-caller.ts'
import { answered } from '../answer.ts'
import { presentSession, session } from './shapes.ts'

const tags = ['Sessions']
const own = { access: ALL_ROLES, manages: true } as const

export const sessions: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/sessions',
    {
      config: own,
      schema: {
        summary: 'Where you are signed in',
        tags,
        operationId: 'listSessions',
        response: { 200: z.object({ items: z.array(session) }) },
      },
    },
    async ({ context, caller }) => ({
      items: (await listSessions(context, caller)).map((it) => presentSession(it, caller.token)),
    }),
  )

  app.delete(
    '/sessions/:session',
    {
      config: own,
      schema: {
        summary: 'End one of your sessions',
        tags,
        operationId: 'endSession',
        params: z.object({ session: z.guid('is not an id') }),
        response: { 204: z.undefined() },
      },
    },
    async ({ context, caller, params }, reply) => {
      answered(await endOwnSession(context, caller, params.session))
      reply.code(204)
      return undefined
    },
  )
}
