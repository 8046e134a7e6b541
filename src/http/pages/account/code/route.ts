import type { FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { giveCode } from '../../../../operations/access/second-step.ts'
import { browserInWords } from '../../../access/browser.ts'
import { giveSession, isFromHere, sessionSecret } from '../../../access/session-cookie.ts'
import { problem } from '../../../problem.ts'
import { html } from '../../html.ts'
import { whereTo } from '../../sign-in/where-to.ts'
import { waitInWords } from '../../sign-in/words.ts'
import { codePath } from '../addresses.ts'
import { typed } from '../typed.ts'

const page = (to: string, fault: string | null) => ({
  title: 'Sign in: the code',
  body: html`<h1>The code</h1><p class="lead">Your authenticator shows six figures. Without it, write one of your recovery codes.</p><form class="sign-in" method="post" action="${codePath}">${
    fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`
  }<input type="hidden" name="to" value="${to}"><p><label for="code">Code</label><input id="code" name="code" autocomplete="one-time-code" autocapitalize="none" spellcheck="false" maxlength="40" required autofocus${fault && html` aria-invalid="true" aria-describedby="fault"`}></p><p><button>Go on</button></p></form><p><a href="/sign-in">Sign in as somebody else</a></p>`,
})

/** The second half of signing in: the session that the password began is good for this page alone. */
export const code: FastifyPluginAsyncZod = async (app) => {
  app.get(codePath, { config: { access: 'open' } }, async ({ query }, reply) =>
    reply.page(page(whereTo(typed(query, 'to')), null)),
  )

  app.post(codePath, { config: { access: 'open' } }, async (request: FastifyRequest, reply) => {
    if (!isFromHere(request)) throw problem('unreadable-request', { detail: 'Use the form on the page.' })
    const to = whereTo(typed(request.body, 'to'))
    const secret = sessionSecret(request)
    if (secret === undefined) return reply.redirect('/sign-in', 303)
    const context = { ...request.context, vault: request.server.door.vault }
    const given = await giveCode(context, secret, typed(request.body, 'code').slice(0, 40), browser(request))
    if (given.ok) {
      giveSession(request, reply, given.value.secret, given.value.endsAt)
      return reply.redirect(to, 303)
    }
    switch (given.error.why) {
      case 'over':
        return reply.redirect(`/sign-in?to=${encodeURIComponent(to)}`, 303)
      case 'wait':
        reply.header('retry-after', String(given.error.seconds))
        return reply.page(page(to, waitInWords(given.error.seconds)), 429)
      case 'wrong':
        return reply.page(page(to, 'That is not the code of now, or it was used already.'), 422)
    }
  })
}

const browser = ({ headers }: FastifyRequest) => browserInWords(headers['user-agent'])
