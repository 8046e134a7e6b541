import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { confirmSecondStep, offerSecondStep } from '../../../../operations/access/second-step.ts'
import { findOpenSession } from '../../../../store/access/sessions.ts'
import { tokenHash } from '../../../../store/access/token.ts'
import { browserInWords } from '../../../access/browser.ts'
import { giveSession, isFromHere, sessionSecret } from '../../../access/session-cookie.ts'
import { problem } from '../../../problem.ts'
import { whereTo } from '../../sign-in/where-to.ts'
import { waitInWords } from '../../sign-in/words.ts'
import { accountPath, codePath, secondStepPath } from '../addresses.ts'
import { typed } from '../typed.ts'
import { recoveryView, setUpView } from './view.ts'

/** Turning two-step sign-in on: from a session, or from one that can do nothing else until it is done. */
export const secondStep: FastifyPluginAsyncZod = async (app) => {
  app.get(secondStepPath, { config: { access: 'open' } }, async (request, reply) =>
    show(request, reply, typed(request.query, 'to'), null),
  )

  app.post(secondStepPath, { config: { access: 'open' } }, async (request, reply) => {
    if (!isFromHere(request)) throw problem('unreadable-request', { detail: 'Use the form on the page.' })
    const secret = sessionSecret(request)
    const open = await sessionOf(request)
    if (!open || secret === undefined) return reply.redirect('/sign-in', 303)
    const to = typed(request.body, 'to')
    const browser = browserInWords(request.headers['user-agent'])
    const code = typed(request.body, 'code').slice(0, 40)
    const done = await confirmSecondStep(contextOf(request), open, secret, code, browser)
    if (done.ok) {
      const { session, recoveryCodes } = done.value
      if (session) giveSession(request, reply, session.secret, session.endsAt)
      return reply.page({ title: 'Recovery codes', body: recoveryView(recoveryCodes, aim(to)), secret: true })
    }
    if (done.error.why === 'not-recent') return show(request, reply, to, SIGN_IN_AGAIN)
    if (done.error.why === 'wait') reply.header('retry-after', String(done.error.seconds))
    const fault =
      done.error.why === 'wait'
        ? waitInWords(done.error.seconds)
        : 'That code is wrong or too old. Enter the next code that your app shows.'
    return show(request, reply, to, fault)
  })
}

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  to: string,
  fault: string | null,
): Promise<FastifyReply> {
  const open = await sessionOf(request)
  if (!open) return reply.redirect(`/sign-in?to=${encodeURIComponent(whereTo(to))}`, 303)
  if (open.stage === 'second-step') return reply.redirect(codePath, 303)
  const offered = await offerSecondStep(contextOf(request), open.caller.account)
  if (!offered) return reply.redirect(accountPath, 303)
  const needed = open.stage === 'set-up'
  const body = setUpView({ offered, to: aim(to), fault, needed })
  return reply.page({ title: 'Two-step sign-in', body, secret: true }, fault ? 422 : 200)
}

const SIGN_IN_AGAIN =
  'You signed in more than 15 minutes ago. Sign in again, and then set it up: it changes how you come in.'

const aim = (to: string): string => (to === '' ? accountPath : whereTo(to))

async function sessionOf(request: FastifyRequest) {
  const secret = sessionSecret(request)
  return secret === undefined ? undefined : findOpenSession(request.context.database, tokenHash(secret))
}

const contextOf = ({ context, server }: FastifyRequest) => ({ ...context, vault: server.door.vault })
