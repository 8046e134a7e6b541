import rateLimit from '@fastify/rate-limit'
import underPressure from '@fastify/under-pressure'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { OpenDatabase } from '../../store/database/database.ts'
import type { CallerFinder } from '../access/caller.ts'
import { networkOf } from '../access/network-of.ts'
import { bearerToken } from '../access/require-caller.ts'
import { sessionSecret } from '../access/session-cookie.ts'
import { problem } from '../problem.ts'

type Limits = {
  readonly requestsPerMinute: number
  readonly database: OpenDatabase
  readonly finder: CallerFinder
}

/** Requests waiting for a connection, for each connection there is, before new ones are turned away. */
const WAITING_PER_CONNECTION = 8

const SAMPLE_MS = 1_000

const overloaded = () => problem('overloaded', { headers: { 'retry-after': '5' } })

/** Turns requests away before they hurt those inside: more than this process can do, or too many from one token. */
export async function limitLoad(
  app: FastifyInstance,
  { requestsPerMinute, database, finder }: Limits,
): Promise<void> {
  // Putting the routes together holds the loop for longer than any request may: measured from a little after that.
  let measuredFrom = Number.POSITIVE_INFINITY
  app.addHook('onReady', async () => {
    measuredFrom = performance.now() + 2 * SAMPLE_MS
  })
  await app.register(underPressure, {
    maxEventLoopDelay: 1_000,
    sampleInterval: SAMPLE_MS,
    pressureHandler: async (request) => {
      if (performance.now() > measuredFrom && !isWatching(request)) throw overloaded()
    },
  })
  await app.register(rateLimit, { global: false, cache: 20_000 })
  const count = app.createRateLimit({
    max: requestsPerMinute,
    timeWindow: 60_000,
    keyGenerator: (request) => whoPays(request, finder),
  })
  app.addHook('onRequest', async (request) => {
    if (isWatching(request)) return
    const { total, waiting } = database.counts()
    if (waiting > WAITING_PER_CONNECTION * total) throw overloaded()
    const counted = await count(request)
    if (counted.isAllowed || !counted.isExceeded) return
    throw problem('too-many-requests', { headers: { 'retry-after': String(counted.ttlInSeconds) } })
  })
}

/** Whoever watches the service must see it most when it is busiest. */
const isWatching = ({ url }: FastifyRequest): boolean =>
  url.startsWith('/health/') || url.startsWith('/metrics')

/** The token or session, once it is known to be one; a guessed one counts against the address it comes from. */
function whoPays(request: FastifyRequest, finder: CallerFinder): string {
  const token = bearerToken(request)
  const session = request.headers.authorization === undefined ? sessionSecret(request) : undefined
  const caller = token ? finder.known('token', token) : session ? finder.known('session', session) : undefined
  return caller ? `token ${caller.token}` : `address ${networkOf(request.ip)}`
}
