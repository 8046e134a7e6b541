import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import {
  acceptInvitation,
  readInvitation,
  tokensInForce,
} from '../../../../operations/access/accept-invitation.ts'
import { LEAST_CHARACTERS, MOST_CHARACTERS } from '../../../../operations/access/password-rules.ts'
import type { OpenInvitation } from '../../../../store/access/invitations.ts'
import { isFromHere } from '../../../access/session-cookie.ts'
import { answered } from '../../../api/answer.ts'
import { problem } from '../../../problem.ts'
import { html } from '../../html.ts'
import { invitationPath } from '../addresses.ts'
import { typed } from '../typed.ts'

const MOST_CODE = 100

/** Where an invitation's link leads: its holder chooses a password, once. */
export const invitation: FastifyPluginAsyncZod = async (app) => {
  app.get(invitationPath, { config: { access: 'open' } }, async (request, reply) => {
    request.guesses.refuseGuesser()
    const code = typed(request.query, 'code').slice(0, MOST_CODE)
    const read = await readInvitation(request.context, code)
    if (!read.ok) request.guesses.noteMiss()
    return show(request, reply, answered(read), code, null)
  })

  app.post(invitationPath, { config: { access: 'open' } }, async (request, reply) => {
    if (!isFromHere(request)) throw problem('unreadable-request', { detail: 'Use the form on the page.' })
    request.guesses.refuseGuesser()
    const code = typed(request.body, 'code').slice(0, MOST_CODE)
    const chosen = await acceptInvitation(
      request.context,
      code,
      typed(request.body, 'password'),
      typed(request.body, 'tokens') === 'keep' ? 'keep' : 'end',
    )
    if (chosen.ok) return reply.redirect('/sign-in', 303)
    if (chosen.error.why !== 'invalid') {
      request.guesses.noteMiss()
      return answered(chosen)
    }
    const read = answered(await readInvitation(request.context, code))
    return show(request, reply, read, code, `This password ${chosen.error.issues[0]?.message}.`)
  })
}

async function show(
  { context }: FastifyRequest,
  reply: FastifyReply,
  it: OpenInvitation,
  code: string,
  fault: string | null,
): Promise<FastifyReply> {
  const tokens = await tokensInForce(context, it.account)
  return reply.page(
    {
      title: 'Choose a password',
      secret: true,
      body: html`
        <h1>Choose a password</h1>
        <p class="lead">
          ${it.first ? `${it.organizationName} has invited you.` : `Choose a new password for your account at ${it.organizationName}.`}
        </p>
        <form class="sign-in" method="post" action="${invitationPath}">
          ${fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`}
          <input type="hidden" name="code" value="${code}">
          <p>
            <label for="username">Your sign-in name</label>
            <input
              id="username" name="username" value="${it.signInName}" autocomplete="username" readonly
            >
          </p>
          <p>
            <label for="password">
              Password <span>(at least ${LEAST_CHARACTERS} characters; a few words work well)</span>
            </label>
            <input
              id="password" name="password" type="password" autocomplete="new-password"
              minlength="${LEAST_CHARACTERS}" maxlength="${MOST_CHARACTERS}" required
              autofocus${fault && html` aria-invalid="true" aria-describedby="fault"`}
            >
          </p>
          ${
            tokens.length > 0 &&
            html`
              <p>
                <label>
                  <input type="checkbox" name="tokens" value="keep"> Keep my tokens: ${tokens.join(', ')}.
                  Otherwise they end now, and programs that use them stop.
                </label>
              </p>
            `
          }
          <p><button>Save password</button></p>
        </form>
      `,
    },
    fault ? 422 : 200,
  )
}
