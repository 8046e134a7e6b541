import type { FastifyInstance } from 'fastify'
import { problem } from '../problem.ts'

const TWO_HOSTS = 'The request names more than one host.'

/**
 * A request that two readers could read in two ways is read by nobody (RFC 9112, 3.2: more than one Host is a 400). And an
 * answer that says nothing of how long it may be kept is kept by nobody but whoever asked, and by them only to ask whether
 * it is still so.
 */
export function takePlainRequests(app: FastifyInstance): void {
  app.addHook('onRequest', async ({ raw: { rawHeaders } }) => {
    let hosts = 0
    for (let at = 0; at < rawHeaders.length; at += 2) if (rawHeaders[at]!.toLowerCase() === 'host') hosts += 1
    if (hosts > 1)
      throw problem('unreadable-request', { detail: TWO_HOSTS, headers: { connection: 'close' } })
  })
  app.addHook('onSend', async (request, reply, payload) => {
    if (reply.hasHeader('cache-control')) return payload
    const read = (request.method === 'GET' || request.method === 'HEAD') && reply.statusCode < 300
    reply.header('cache-control', read ? 'private, no-cache' : 'no-store')
    return payload
  })
}
