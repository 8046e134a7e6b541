import type { FastifyReply, FastifyRequest } from 'fastify'
import { ownAddress } from './own-address.ts'

export type Cookie = {
  /** Without the prefix that it has behind TLS. */
  readonly name: string
  readonly path: string
}

/** Behind TLS: by the address people are told, or as the request came. */
const isSecure = (request: FastifyRequest): boolean => ownAddress(request).startsWith('https:')

/** Behind TLS a browser takes such a name with Secure only, and `__Host-` from this very host alone (RFC 6265bis). */
function fullName(request: FastifyRequest, { name, path }: Cookie): string {
  if (!isSecure(request)) return name
  return path === '/' ? `__Host-${name}` : `__Secure-${name}`
}

/** What a browser sends along under that name, where it is one of ours. */
export function readCookie(request: FastifyRequest, cookie: Cookie): string | undefined {
  const name = fullName(request, cookie)
  for (const part of (request.headers.cookie ?? '').split(';')) {
    const [key, value] = part.trim().split('=', 2)
    if (key === name) return /^[\w-]{1,4096}$/.test(value ?? '') ? value : undefined
  }
  return undefined
}

/**
 * Kept from scripts (HttpOnly), and not sent along when another site posts here (SameSite=Lax). No signature: what it
 * holds is either random or sealed. No value removes it.
 */
export function setCookie(
  request: FastifyRequest,
  reply: FastifyReply,
  cookie: Cookie,
  value: string,
  until: Date | null,
): void {
  const parts = [
    `${fullName(request, cookie)}=${value}`,
    until === null ? 'Max-Age=0' : `Expires=${until.toUTCString()}`,
    `Path=${cookie.path}`,
    'HttpOnly',
    'SameSite=Lax',
    ...(isSecure(request) ? ['Secure'] : []),
  ]
  reply.header('set-cookie', parts.join('; '))
}
