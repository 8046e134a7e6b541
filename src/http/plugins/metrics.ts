import { timingSafeEqual } from 'node:crypto'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client'
import { quotasMet, USUAL_QUOTAS } from '../../operations/quotas.ts'
import { tokenHash } from '../../store/access/token.ts'
import { bearerToken } from '../access/require-caller.ts'
import { problem } from '../problem.ts'
import type { Services } from '../services.ts'
import { watchWork } from './work-metrics.ts'

const THIS_MACHINE = /^(?:127\.|::1$|::ffff:127\.)/

const isFromThisMachine = ({ raw, headers }: FastifyRequest): boolean =>
  THIS_MACHINE.test(raw.socket.remoteAddress ?? '') &&
  headers['x-forwarded-for'] === undefined &&
  headers.forwarded === undefined

/** Figures for an operator, in Prometheus' text form. Routes, never addresses: no county or parcel shows in them. */
export function answerMetrics(
  app: FastifyInstance,
  { database, files, settings: { METRICS_TOKEN: token } }: Pick<Services, 'database' | 'files' | 'settings'>,
): Registry {
  const registry = new Registry()
  collectDefaultMetrics({ register: registry })
  const seconds = new Histogram({
    name: 'asfound_http_request_seconds',
    help: 'Time to answer, by method, route and status',
    labelNames: ['method', 'route', 'status'],
    buckets: [0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1, 3, 10],
    registers: [registry],
  })
  const problems = new Counter({
    name: 'asfound_http_problems_total',
    help: 'Answers that are server faults, by route',
    labelNames: ['route'],
    registers: [registry],
  })
  new Gauge({
    name: 'asfound_database_connections',
    help: 'Database connections: the limit, open, idle, and requests waiting for one',
    labelNames: ['state'],
    registers: [registry],
    collect() {
      const { most, total, idle, waiting } = database.counts()
      this.set({ state: 'most' }, most)
      this.set({ state: 'total' }, total)
      this.set({ state: 'idle' }, idle)
      this.set({ state: 'waiting' }, waiting)
    },
  })
  new Gauge({
    name: 'asfound_quotas_met_total',
    help: 'Requests refused because an organization reached a quota, by quota',
    labelNames: ['what'],
    registers: [registry],
    collect() {
      for (const what of Object.keys(USUAL_QUOTAS)) this.set({ what }, quotasMet().get(what as never) ?? 0)
    },
  })
  watchWork(registry, database, files)
  app.addHook('onResponse', async (request, reply) => {
    const route = request.routeOptions.url ?? 'none'
    seconds.observe({ method: request.method, route, status: reply.statusCode }, reply.elapsedTime / 1_000)
    if (reply.statusCode >= 500) problems.inc({ route })
  })
  app.get('/metrics', { config: { access: 'open' }, schema: { hide: true } }, async (request, reply) => {
    const sent = bearerToken(request)
    // Without a token they are for this machine alone: not for whoever comes through a proxy on it either.
    if (token === undefined && !isFromThisMachine(request)) {
      throw problem('not-allowed', {
        detail: 'Metrics are open to this machine only. Set METRICS_TOKEN to read them from another.',
      })
    }
    const allowed = token === undefined || (sent && timingSafeEqual(tokenHash(sent), tokenHash(token)))
    if (!allowed)
      throw problem('not-signed-in', { headers: { 'www-authenticate': 'Bearer realm="asfound metrics"' } })
    return reply.type(registry.contentType).send(await registry.metrics())
  })
  return registry
}
