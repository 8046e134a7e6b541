import { hash } from 'node:crypto'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { problem } from '../problem.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** A write that replaces something: needs If-Match. The handler calls `requireVersion`. */
    replaces?: boolean
  }
}

/** The entity tag of a resource that counts its revisions. */
export const revisionTag = (revision: number): string => `"r${revision}"`

/** Sets the ETag of a read or of what a write made. */
export const tagRevision = (reply: FastifyReply, revision: number): FastifyReply =>
  reply.header('etag', revisionTag(revision))

/**
 * The revision that the caller read and means to replace (RFC 9110, 13.1.1). 428 when If-Match is absent.
 * Hand it to the operation, which compares it inside its transaction; on a mismatch there, throw `stale()`.
 * `*` stands for whatever is there and gives undefined.
 */
export function requireVersion({ headers }: FastifyRequest): number | undefined {
  const sent = headers['if-match']
  if (sent === undefined) throw problem('version-needed')
  if (sent.trim() === '*') return undefined
  const tags = sent.split(',').map((tag) => /^\s*"r(\d{1,9})"\s*$/.exec(tag)?.[1])
  const [only] = tags
  if (tags.length !== 1 || only === undefined) throw stale()
  return Number(only)
}

/** The same where a write may also be made unseen: undefined when If-Match is absent. */
export const versionIfSent = (request: FastifyRequest): number | undefined =>
  request.headers['if-match'] === undefined ? undefined : requireVersion(request)

export const stale = () => problem('stale')

/** The version asked for, compared: for handlers that hold the current revision already. */
export function requireMatch(request: FastifyRequest, current: number): void {
  const wanted = requireVersion(request)
  if (wanted !== undefined && wanted !== current) throw stale()
}

/**
 * Every read carries an ETag: its revision's where the handler set one, else one of its bytes. A read whose
 * tag the caller already has (If-None-Match) is answered 304 without a body. What may not be kept carries none.
 */
export function tagReads(app: FastifyInstance): void {
  app.addHook('onSend', async (request, reply, payload) => {
    if ((request.method !== 'GET' && request.method !== 'HEAD') || reply.statusCode !== 200) return payload
    if (reply.getHeader('cache-control') === 'no-store') return payload
    const tag = reply.getHeader('etag') ?? tagOfBytes(payload)
    if (typeof tag !== 'string') return payload
    reply.header('etag', tag)
    if (!matches(request.headers['if-none-match'], tag)) return payload
    reply.code(304).removeHeader('content-length')
    return ''
  })
}

function tagOfBytes(payload: unknown): string | undefined {
  if (typeof payload !== 'string' && !Buffer.isBuffer(payload)) return undefined
  return `W/"${hash('sha256', payload, 'base64url')}"`
}

/** Weak comparison (RFC 9110, 8.8.3.2). */
function matches(sent: string | undefined, tag: string): boolean {
  if (sent === undefined) return false
  const bare = (text: string) => text.trim().replace(/^W\//, '')
  return sent.trim() === '*' || sent.split(',').some((one) => bare(one) === bare(tag))
}
