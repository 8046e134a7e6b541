import type { FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import { readCookie, setCookie } from '../../../access/cookie.ts'

const LEAVING = { name: 'asfound_leaving', path: '/sign-in' } as const
const WITHIN_MS = 600_000
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
 * What is kept while somebody is at the county's own sign-in: sealed, in their own browser. So nobody can come back in
 * another's name, and nothing is stored for those who never come back.
 */
export function holdLeaving(request: FastifyRequest, reply: FastifyReply, left: Left): void {
  const until = new Date(request.context.clock().getTime() + WITHIN_MS)
  const plain = JSON.stringify({ ...left, until: until.getTime() })
  const sealed = request.server.door.vault.seal(plain, PURPOSE)
  setCookie(request, reply, LEAVING, sealed.toString('base64url'), until)
}

/** Good once, and for ten minutes. */
export function takeLeaving(request: FastifyRequest, reply: FastifyReply): Left | undefined {
  const sent = readCookie(request, LEAVING)
  setCookie(request, reply, LEAVING, '', null)
  const plain = sent && request.server.door.vault.open(Buffer.from(sent, 'base64url'), PURPOSE)
  if (!plain) return undefined
  const { until, ...left } = held.parse(JSON.parse(plain))
  return until > request.context.clock().getTime() ? left : undefined
}
