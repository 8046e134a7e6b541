import type { FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { giveCode } from '../../../../operations/access/second-step.ts'
import { inLanguage } from '../../../../words/copy.ts'
import type { Language } from '../../../../words/language.ts'
import { browserInWords } from '../../../access/browser.ts'
import { giveSession, isFromHere, sessionSecret } from '../../../access/session-cookie.ts'
import { problem } from '../../../problem.ts'
import { html } from '../../html.ts'
import { languageOf } from '../../language.ts'
import { CODE } from '../../sign-in/copy.ts'
import { whereTo } from '../../sign-in/where-to.ts'
import { waitInWords } from '../../sign-in/words.ts'
import { codePath } from '../addresses.ts'
import { typed } from '../typed.ts'

const page = (request: FastifyRequest, to: string, faultIn: ((language: Language) => string) | null) => {
  const language = languageOf(request)
  const copy = inLanguage(CODE, language)
  const fault = faultIn?.(language)
  const body = html`
    <h1>${copy.title}</h1>
    <p class="lead">${copy.lead}</p>
    <form class="sign-in" method="post" action="${codePath}">
      ${fault && html`<p class="fault" id="fault" role="alert">${fault}</p>`}
      <input type="hidden" name="to" value="${to}">
      <p>
        <label for="code">${copy.code}</label>
        <input
          id="code" name="code" autocomplete="one-time-code" autocapitalize="none" spellcheck="false"
          maxlength="40" required
          autofocus${fault && html` aria-invalid="true" aria-describedby="fault"`}
        >
      </p>
      <p><button>${copy.submit}</button></p>
    </form>
    <p><a href="/sign-in">${copy.other}</a></p>
  `
  return { title: copy.title, language, body }
}

/** The second half of signing in. The session that the password began opens this page and no other. */
export const code: FastifyPluginAsyncZod = async (app) => {
  app.get(codePath, { config: { access: 'open' } }, async (request, reply) =>
    reply.page(page(request, whereTo(typed(request.query, 'to')), null)),
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
      case 'wait': {
        const { seconds } = given.error
        reply.header('retry-after', String(seconds))
        return reply.page(
          page(request, to, (language) => waitInWords(seconds, language)),
          429,
        )
      }
      case 'wrong':
        return reply.page(
          page(request, to, (language) => CODE.wrong[language]),
          422,
        )
    }
  })
}

const browser = ({ headers }: FastifyRequest) => browserInWords(headers['user-agent'])
