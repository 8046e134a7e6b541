import type { FastifyInstance } from 'fastify'
import { problem } from '../problem.ts'

/** What a form may hold beside its file. */
const BESIDE_THE_FILE = 2 * 1_048_576

/** Uploads that can't be taken: those that say so beforehand are refused unread, and of others the rest is forgotten. */
export function limitUploads(app: FastifyInstance, largestFile: number): void {
  const most = largestFile + BESIDE_THE_FILE
  app.addHook('onRequest', async ({ headers }) => {
    const isForm = headers['content-type']?.startsWith('multipart/') ?? false
    if (isForm && Number(headers['content-length'] ?? 0) > most) {
      // There is too much of it to wait for: whoever sends on after the answer is cut.
      throw problem('too-large', { headers: { connection: 'close' } })
    }
  })
  forgetUnread(app, most)
}

/**
 * An upload that is refused half-way is answered at once, while the rest of it is still on its way. That rest is read
 * and forgotten: left where it is, it would stand before the next request on the connection until the service gave that
 * up; and a connection that is cut while somebody sends on it often takes the answer with it. After `most` bytes it is
 * cut all the same.
 */
function forgetUnread(app: FastifyInstance, most: number): void {
  app.addHook('onResponse', async ({ raw }) => {
    if (raw.readableEnded || raw.destroyed) return
    let left = most
    raw.unpipe()
    raw.on('error', () => {})
    raw.on('data', (chunk: Buffer) => {
      left -= chunk.length
      if (left < 0) raw.destroy()
    })
    raw.resume()
  })
}
