import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { changePassword, confirmPassword } from '../../../../operations/access/change-password.ts'
import { readOwnOrganization } from '../../../../operations/access/organizations.ts'
import { readPerson } from '../../../../operations/access/read-people.ts'
import { endOwnSession, listSessions } from '../../../../operations/access/sessions.ts'
import { takeOffOwnSecondStep } from '../../../../operations/access/take-off-own-second-step.ts'
import { ALL_ROLES } from '../../../access/require-caller.ts'
import { answered } from '../../../api/answer.ts'
import { waitInWords } from '../../sign-in/words.ts'
import { accountPath } from '../addresses.ts'
import { typed } from '../typed.ts'
import { ownView } from './view.ts'

const config = { access: ALL_ROLES, manages: true } as const
type Notice = { readonly fault?: string; readonly done?: string }

/** One's own account: password, two-step sign-in, open sessions. */
export const account: FastifyPluginAsyncZod = async (app) => {
  app.get(accountPath, { config }, async (request, reply) => show(request, reply, {}))

  app.post(`${accountPath}/password`, { config }, async (request, reply) => {
    const { context, caller, body } = request
    const asked = { current: typed(body, 'current'), wanted: typed(body, 'wanted') }
    const changed = await changePassword(context, caller, asked)
    if (changed.ok) {
      return show(request, reply, { done: 'Your password is changed. You are signed out everywhere else.' })
    }
    const { error } = changed
    switch (error.why) {
      case 'wait':
        return show(request, reply, { fault: waitInWords(error.seconds) }, 429)
      case 'wrong':
        return show(request, reply, { fault: 'That is not your current password.' }, 422)
      case 'unfit':
        return show(request, reply, { fault: `The new password ${error.says}.` }, 422)
    }
  })

  app.post(
    `${accountPath}/sessions/:session/end`,
    { config, schema: { params: z.object({ session: z.guid() }) } },
    async ({ context, caller, params }, reply) => {
      answered(await endOwnSession(context, caller, params.session))
      return reply.redirect(accountPath, 303)
    },
  )

  app.post(`${accountPath}/second-step/removal`, { config }, async (request, reply) => {
    const { context, caller, body } = request
    const known = await confirmPassword(context, caller, typed(body, 'current'))
    if (!known.ok) {
      const fault =
        known.error.why === 'wait' ? waitInWords(known.error.seconds) : 'That is not your password.'
      return show(request, reply, { fault }, known.error.why === 'wait' ? 429 : 422)
    }
    answered(await takeOffOwnSecondStep(context, caller))
    return show(request, reply, { done: 'Two-step sign-in is off.' })
  })
}

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  notice: Notice,
  status?: number,
): Promise<FastifyReply> {
  const { context, caller } = request
  const body = ownView({
    person: answered(await readPerson(context, caller, 'own')),
    own: await readOwnOrganization(context, caller),
    sessions: await listSessions(context, caller),
    current: caller.token,
    reviewsIn: caller.role === 'reviewer' ? caller.counties : [],
    ...notice,
  })
  return reply.page({ title: 'Account', body }, status)
}
