import type { FastifyInstance, FastifyRequest, RouteOptions } from 'fastify'
import { Impossible, invariant } from '../../base/invariant.ts'
import type { Caller } from '../../store/access/find-token.ts'
import type { Person, Role } from '../../store/database/actor.ts'
import { problem } from '../problem.ts'
import type { CallerFinder } from './caller.ts'
import { isFromHere, sessionSecret } from './session-cookie.ts'

/** Who may call a route: the roles, or anybody at all without a token. */
export type Access = readonly Role[] | 'open'

export const ALL_ROLES: readonly Role[] = ['firm', 'reviewer', 'agent']

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Who may call this route. A route that does not say is refused when the service starts. */
    access?: Access
    /** About an organization's people, tokens or sessions: for a session, or a token that was made for it. */
    manages?: boolean
    /** Only for administrators of the organization. */
    administers?: boolean
  }
  interface FastifyInstance {
    /** Every route there is, as it was declared. */
    readonly routesServed: readonly RouteOptions[]
  }
  interface FastifyRequest {
    /** Whoever holds the token; throws on an open route. */
    readonly caller: Caller
    /** The caller at work in the county of the path; throws where the path names none. */
    readonly actor: Person
    callerOrNobody: Caller | undefined
  }
}

/**
 * Lets nobody through whom the route does not name. What a caller may not see is answered as if it were not
 * there: a county outside the token, a read closed to the role. Only what could be seen but not done is a 403.
 */
export function requireCaller(app: FastifyInstance, finder: CallerFinder): void {
  app.decorateRequest('callerOrNobody', undefined)
  app.decorateRequest('caller', { getter: callerOf })
  app.decorateRequest('actor', { getter: actorOf })
  const routes: RouteOptions[] = []
  app.decorate('routesServed', routes)
  app.addHook('onRoute', (route) => void routes.push(route))
  app.addHook('onReady', async () => {
    const silent = routes.find(({ config }) => !config?.access)
    if (silent)
      throw new Impossible(`${silent.method} ${silent.url} does not say who may call it (config.access)`)
  })
  app.addHook('onRequest', async (request) => {
    if (request.is404) return
    const { access } = request.routeOptions.config
    invariant(access, `${request.routeOptions.url} does not say who may call it`)
    if (access === 'open') return
    const caller = await callerFrom(request, finder)
    request.callerOrNobody = caller
    const county = countyInPath(request)
    if (county !== undefined && !caller.counties.includes(county)) throw problem('not-found')
    const why = reasonAgainst(request, caller, access)
    if (why === undefined) return
    throw isRead(request) ? problem('not-found') : problem('not-allowed', { detail: why })
  })
}

const isRead = ({ method }: FastifyRequest): boolean => method === 'GET' || method === 'HEAD'

/** Why a caller may not do what is asked, in words; undefined where they may. */
function reasonAgainst(request: FastifyRequest, caller: Caller, roles: readonly Role[]): string | undefined {
  const { manages, administers } = request.routeOptions.config
  const county = countyInPath(request)
  if (!roles.includes(caller.role)) {
    return `This requires the role ${roles.join(' or ')}. The token has the role ${caller.role}.`
  }
  if (manages && !caller.manages) return 'This token cannot manage people, tokens and sessions.'
  if (administers && !caller.administers) return 'This requires an administrator of the organization.'
  const writes = !isRead(request) && county !== undefined
  if (writes && !caller.writes.includes(county)) return 'This token can only read in this county.'
  return undefined
}

/** The token of the Authorization header (RFC 6750), if there is one. */
export const bearerToken = ({ headers }: FastifyRequest): string | undefined =>
  /^Bearer +([\w.~+/=-]{1,512}) *$/i.exec(headers.authorization ?? '')?.[1]

async function callerFrom(request: FastifyRequest, finder: CallerFinder): Promise<Caller> {
  const token = bearerToken(request)
  const secret = sessionSecret(request)
  // A request that names a token means the token.
  if (request.headers.authorization === undefined && secret !== undefined) {
    return sessionCaller(request, secret, finder)
  }
  if (token === undefined) {
    throw problem('not-signed-in', { headers: { 'www-authenticate': 'Bearer realm="asfound"' } })
  }
  const caller = await finder.find(token)
  if (caller) return caller
  throw problem('not-signed-in', {
    detail: 'The token is unknown, expired or revoked.',
    headers: { 'www-authenticate': 'Bearer realm="asfound", error="invalid_token"' },
  })
}

async function sessionCaller(request: FastifyRequest, secret: string, finder: CallerFinder): Promise<Caller> {
  if (!isFromHere(request)) {
    throw problem('not-allowed', {
      detail: 'This form came from another site. Open the page here and send it again.',
    })
  }
  const caller = await finder.findSession(secret)
  if (caller) return caller
  throw problem('not-signed-in', { detail: 'Your session has ended. Please sign in again.' })
}

const countyInPath = (request: FastifyRequest): string | undefined =>
  (request.params as { readonly county?: string } | undefined)?.county

function callerOf(this: FastifyRequest): Caller {
  invariant(this.callerOrNobody, 'an open route asked who is calling')
  return this.callerOrNobody
}

function actorOf(this: FastifyRequest): Person {
  const { account, organization, role } = callerOf.call(this)
  const county = countyInPath(this)
  invariant(county, `${this.routeOptions.url} names no county`)
  return { account, organization, role, county }
}
