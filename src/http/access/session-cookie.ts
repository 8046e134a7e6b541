import type { FastifyReply, FastifyRequest } from 'fastify'
import { readCookie, setCookie } from './cookie.ts'

const SESSION = { name: 'asfound_session', path: '/' } as const

/** The secret of the session that a browser sends along, if there is one: 256 random bits, kept here by hash alone. */
export const sessionSecret = (request: FastifyRequest): string | undefined => readCookie(request, SESSION)

export const giveSession = (
  request: FastifyRequest,
  reply: FastifyReply,
  secret: string,
  endsAt: Date,
): void => setCookie(request, reply, SESSION, secret, endsAt)

export const takeSession = (request: FastifyRequest, reply: FastifyReply): void =>
  setCookie(request, reply, SESSION, '', null)

/**
 * Whether a request that changes something comes from a page of this service. Browsers say so themselves
 * (Sec-Fetch-Site); one too old for that says at least where the page is from. Who says neither is refused: only a
 * browser sends a cookie, and programs have tokens.
 */
export function isFromHere({ headers, host, method }: FastifyRequest): boolean {
  if (method === 'GET' || method === 'HEAD') return true
  const site = headers['sec-fetch-site']
  if (site !== undefined) return site === 'same-origin' || site === 'none'
  const { origin } = headers
  return origin !== undefined && URL.canParse(origin) && new URL(origin).host === host
}
