import type { FastifyInstance } from 'fastify'

const LOOK_EVERY_MS = 200

/**
 * Told to stop, the service finishes what is inside, and each answer is then the last on its connection: left open for the
 * next request, as connections are, every client that was just answered would hold the stop up until it gave up. What had
 * begun to be answered before is looked after until it has ended.
 */
export function lastAnswers(app: FastifyInstance): void {
  let looking: NodeJS.Timeout | undefined
  app.addHook('preClose', async () => {
    looking = setInterval(() => app.server.closeIdleConnections(), LOOK_EVERY_MS).unref()
  })
  app.addHook('onClose', async () => clearInterval(looking))
  app.addHook('onSend', async (_request, reply) => {
    if (looking) reply.header('connection', 'close')
  })
}
