import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'

/** Every resource under /v1. Each is a plugin of its own in api/<resource>/. */
export const registerRoutes: FastifyPluginAsyncZod = async () => {}
