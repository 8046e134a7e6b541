import type { FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { signIn as begin, signOut as end } from '../../../operations/access/sign-in.ts'
import { browserInWords } from '../../access/browser.ts'
import { networkOf } from '../../access/network-of.ts'
import { giveSession, isFromHere, sessionSecret, takeSession } from '../../access/session-cookie.ts'
import { problem } from '../../problem.ts'
import { stepPath } from '../account/addresses.ts'
import { languageOf } from '../language.ts'
import { SIGN_IN } from './copy.ts'
import { type SignInForm, signInView } from './view.ts'
import { whereTo } from './where-to.ts'
import { waitInWords } from './words.ts'

type Fields = Readonly<Record<string, unknown>>

export const signIn: FastifyPluginAsyncZod = async (app) => {
  const page = (request: FastifyRequest, form: Omit<SignInForm, 'language' | 'providers'>) => {
    const language = languageOf(request)
    const providers = [...app.door.providers.values()].map(({ settings }) => settings)
    return {
      title: SIGN_IN.title[language],
      language,
      body: signInView({ ...form, language, providers }),
    }
  }

  app.get('/sign-in', { config: { access: 'open' } }, async (request, reply) =>
    reply.page(page(request, { name: '', to: whereTo((request.query as Fields).to), fault: null })),
  )

  app.post('/sign-in', { config: { access: 'open' } }, async (request, reply) => {
    const { name, password, to } = (request.body ?? {}) as Fields
    if (!isFromHere(request) || typeof name !== 'string' || typeof password !== 'string') throw notFromForm()
    const begun = await begin(request.context, {
      name: name.slice(0, 80),
      password: password.slice(0, 200),
      address: networkOf(request.ip),
      browser: browserInWords(request.headers['user-agent']),
    })
    if (begun.ok) {
      const { secret, endsAt, stage } = begun.value
      giveSession(request, reply, secret, endsAt)
      const aim = whereTo(to)
      return reply.redirect(stage === 'full' ? aim : stepPath(stage, aim), 303)
    }
    const { error } = begun
    if (error.why === 'wait') reply.header('retry-after', String(error.seconds))
    const language = languageOf(request)
    const fault = error.why === 'wait' ? waitInWords(error.seconds, language) : SIGN_IN.wrong[language]
    return reply.page(page(request, { name, to: whereTo(to), fault }), error.why === 'wait' ? 429 : 422)
  })

  app.post('/sign-out', { config: { access: 'open' } }, async (request, reply) => {
    const secret = sessionSecret(request)
    if (!isFromHere(request)) throw notFromForm()
    if (secret !== undefined) await end(request.context, secret)
    takeSession(request, reply)
    return reply.redirect('/sign-in', 303)
  })
}

const notFromForm = () => problem('unreadable-request', { detail: 'Use the form on the page.' })
