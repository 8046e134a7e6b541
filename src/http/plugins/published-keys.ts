import type { FastifyInstance } from 'fastify'
import type { Database } from '../../store/database/database.ts'
import { withoutCounty } from '../../store/database/transact.ts'
import { signingKeys } from '../../store/signing-keys.ts'

/** How long a reader may keep the keys: a new one is published before it signs, so an old copy lacks it for minutes. */
const KEEP_SECONDS = 300

/** The public keys of letters as a JWK Set (RFC 7517), those that sign no more among them. */
export function publishKeys(app: FastifyInstance, database: Database): void {
  app.get(
    '/.well-known/jwks.json',
    { config: { access: 'open' }, schema: { hide: true } },
    async (_request, reply) => {
      const keys = await withoutCounty(database, signingKeys)
      return reply
        .type('application/jwk-set+json')
        .header('cache-control', `public, max-age=${KEEP_SECONDS}`)
        .serializer(JSON.stringify)
        .send({ keys: keys.map(({ key }) => key) })
    },
  )
}
