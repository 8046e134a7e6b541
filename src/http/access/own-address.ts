import type { FastifyRequest } from 'fastify'

/** Where people reach this service, without a slash at the end: as set, or wherever the request came to. */
export const ownAddress = ({ server, protocol, host }: FastifyRequest): string =>
  (server.door.publicAddress ?? `${protocol}://${host}`).replace(/\/+$/, '')

/** In the query, which no log holds, and no page sends on. */
export const invitationAddress = (request: FastifyRequest, secret: string): string =>
  `${ownAddress(request)}/invitation?code=${encodeURIComponent(secret)}`
