import type { FastifyInstance } from 'fastify'
import type { Turns } from '../../base/turns.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** What takes long and holds a connection of the database meanwhile: so many at once, in turns by organization. */
    inTurn?: Turns
  }
}

/** Whoever waits for their turn waits before anything is begun for them: register it after whatever begins something. */
export function takeTurns(app: FastifyInstance): void {
  app.addHook('onRoute', (route) => {
    const turns = route.config?.inTurn
    if (!turns) return
    const { handler } = route
    route.handler = function (request, reply) {
      return turns(request.caller.organization, async () => handler.call(this, request, reply))
    }
  })
}
