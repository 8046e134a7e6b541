import type { FastifyReply, FastifyRequest } from 'fastify'

const NAME = 'asfound_session'
const HELD = new RegExp(`(?:^|;\\s*)${NAME}=([\\w.~+/=-]{1,512})(?:;|$)`)

/** The secret of the session that a browser sends along, if there is one. */
export const sessionSecret = ({ headers }: FastifyRequest): string | undefined =>
  HELD.exec(headers.cookie ?? '')?.[1]

/**
 * Kept from scripts, and not sent along when another site posts here. No signature: the secret is 256 random bits, of
 * which the service keeps a hash, so there is nothing that a forger could guess or alter.
 */
export function giveSession(
  request: FastifyRequest,
  reply: FastifyReply,
  secret: string,
  endsAt: Date,
): void {
  const expires = `Expires=${endsAt.toUTCString()}`
  reply.header('set-cookie', [`${NAME}=${secret}`, expires, ...attributes(request)].join('; '))
}

export function takeSession(request: FastifyRequest, reply: FastifyReply): void {
  reply.header('set-cookie', [`${NAME}=`, 'Max-Age=0', ...attributes(request)].join('; '))
}

const attributes = ({ protocol }: FastifyRequest): readonly string[] => [
  'Path=/',
  'HttpOnly',
  'SameSite=Lax',
  ...(protocol === 'https' ? ['Secure'] : []),
]

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
