import type { FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'

const NAME = 'asfound_leaving'
const HELD = new RegExp(`(?:^|;\\s*)${NAME}=([\\w-]{1,4096})(?:;|$)`)
const WITHIN_SECONDS = 600
const PURPOSE = 'sign-in elsewhere'

const held = z.object({
  state: z.string(),
  nonce: z.string(),
  verifier: z.string(),
  county: z.string(),
  to: z.string(),
  until: z.number(),
})
export type Left = Omit<z.output<typeof held>, 'until'>

/**
 * What is remembered while somebody is away at the county's own sign-in: in their own browser, sealed, so that nobody
 * can come back in another's name and nothing has to be stored for who never comes back.
 */
export function holdLeaving(request: FastifyRequest, reply: FastifyReply, left: Left): void {
  const until = request.context.clock().getTime() + WITHIN_SECONDS * 1_000
  const sealed = request.server.door.vault.seal(JSON.stringify({ ...left, until }), PURPOSE)
  cookie(request, reply, sealed.toString('base64url'), WITHIN_SECONDS)
}

/** Good once, and for ten minutes. */
export function takeLeaving(request: FastifyRequest, reply: FastifyReply): Left | undefined {
  const sent = HELD.exec(request.headers.cookie ?? '')?.[1]
  cookie(request, reply, '', 0)
  const plain = sent && request.server.door.vault.open(Buffer.from(sent, 'base64url'), PURPOSE)
  if (!plain) return undefined
  const { until, ...left } = held.parse(JSON.parse(plain))
  return until > request.context.clock().getTime() ? left : undefined
}

/** Lax: it has to come along when the provider sends the browser back. */
function cookie(request: FastifyRequest, reply: FastifyReply, value: string, seconds: number): void {
  const secure = request.protocol === 'https' ? ['Secure'] : []
  const parts = [
    `${NAME}=${value}`,
    `Max-Age=${seconds}`,
    'Path=/sign-in',
    'HttpOnly',
    'SameSite=Lax',
    ...secure,
  ]
  reply.header('set-cookie', parts.join('; '))
}
