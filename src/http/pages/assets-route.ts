import type { FastifyPluginAsync } from 'fastify'
import { problem } from '../problem.ts'
import { gzipped } from './gzipped.ts'
import { PUBLIC_FILES } from './public-files.ts'

/** The sheet, the mark and the modules: open to all, and good for ever under their addresses. */
export const assets: FastifyPluginAsync = async (app) => {
  const files = new Map([...PUBLIC_FILES.values()].map((file) => [file.path, file]))
  app.get('/assets/:name', { config: { access: 'open' } }, async ({ url }, reply) => {
    const file = files.get(url.split('?', 1)[0] ?? '')
    if (!file) throw problem('not-found')
    return reply
      .header('cache-control', 'public, max-age=31536000, immutable')
      .type(file.type)
      .send(await gzipped(reply, file.body, file.gzipped))
  })
}
