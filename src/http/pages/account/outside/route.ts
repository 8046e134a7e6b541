import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { Provider } from '../../../../net/sign-in-provider.ts'
import { signInOutside } from '../../../../operations/access/sign-in-outside.ts'
import { browserInWords } from '../../../access/browser.ts'
import { ownAddress } from '../../../access/own-address.ts'
import { giveSession } from '../../../access/session-cookie.ts'
import { problem } from '../../../problem.ts'
import { html } from '../../html.ts'
import { whereTo } from '../../sign-in/where-to.ts'
import { stepPath } from '../addresses.ts'
import { typed } from '../typed.ts'
import { holdLeaving, takeLeaving } from './leaving.ts'

const params = z.object({ provider: z.string().max(40) })
const returnPath = (county: string): string => `/sign-in/with/${county}/return`

/** Signing in with a county's own sign-in service: to it and back. */
export const outside: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/sign-in/with/:provider',
    { config: { access: 'open' }, schema: { params } },
    async (request, reply) => {
      const provider = providerOf(request, request.params.provider)
      const { county } = provider.settings
      const { address, leaving } = await provider.leave(`${ownAddress(request)}${returnPath(county)}`)
      holdLeaving(request, reply, { ...leaving, county, to: whereTo(typed(request.query, 'to')) })
      return reply.header('cache-control', 'no-store').redirect(address.href, 303)
    },
  )

  app.get(
    '/sign-in/with/:provider/return',
    { config: { access: 'open' }, schema: { params } },
    async (request, reply) => {
      const provider = providerOf(request, request.params.provider)
      const { county, title, secondStep } = provider.settings
      const left = takeLeaving(request, reply)
      if (left?.county !== county)
        return refused(reply, 'Signing in took too long or began in another browser. Please try again.')
      const back = new URL(`${ownAddress(request)}${returnPath(county)}`)
      back.search = new URL(request.url, 'http://here.invalid').search
      const identity = await provider.comeBack(back, left)
      if (!identity.ok) {
        request.log.warn({ reason: identity.error, county }, 'a sign-in with a provider failed')
        return refused(reply, `${title} did not confirm who you are.`)
      }
      const browser = browserInWords(request.headers['user-agent'])
      const asked = { identity: identity.value, county, secondStep, browser }
      const begun = await signInOutside(request.context, asked)
      if (!begun.ok) return refused(reply, begun.error)
      const { secret, endsAt, stage } = begun.value
      giveSession(request, reply, secret, endsAt)
      return reply.redirect(stage === 'full' ? left.to : stepPath(stage, left.to), 303)
    },
  )
}

function providerOf({ server }: FastifyRequest, county: string): Provider {
  const provider = server.door.providers.get(county)
  if (!provider) throw problem('not-found')
  return provider
}

const refused = (reply: FastifyReply, says: string) =>
  reply.page(
    {
      title: 'Not signed in',
      body: html`
        <h1>Not signed in</h1>
        <p class="lead">${says}</p>
        <p><a href="/sign-in">Back to sign in</a></p>
      `,
    },
    422,
  )
