import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { Span, Traces } from '../../net/tracing/traces.ts'

declare module 'fastify' {
  interface FastifyRequest {
    /** The span of this request, where traces are written. */
    span?: Span | undefined
  }
}

type Settable = { readonly setBindings?: (bindings: object) => void }

/**
 * A span for each request: its method, route and status, under the names of OpenTelemetry's conventions. Never its
 * address, query, headers or body. The span's trace is in the request's log, too.
 */
export function traceRequests(app: FastifyInstance, traces: Traces | undefined): void {
  if (!traces) return
  app.decorateRequest('span', undefined)
  app.addHook('onRequest', (request, _reply, done) => {
    if (isWatching(request)) return done()
    const { method, headers } = request
    const span = traces.begin(method, { kind: 'server', headers, told: { 'http.request.method': method } })
    request.span = span
    const log = request.log as Settable
    log.setBindings?.({ traceId: span.traceId })
    span.run(done)
  })
  // Reading a body goes on in the name of the connection: here it is this request's again.
  app.addHook('preValidation', (request, _reply, done) => (request.span ? request.span.run(done) : done()))
  app.addHook('onResponse', async ({ span, method, routeOptions, id }, { statusCode }) => {
    const route = routeOptions.url
    span?.end(
      {
        ...(route === undefined ? {} : { name: `${method} ${route}`, 'http.route': route }),
        'http.response.status_code': statusCode,
        'asfound.request_id': id,
      },
      statusCode >= 500,
    )
  })
}

const isWatching = ({ url }: FastifyRequest): boolean =>
  url.startsWith('/health/') || url.startsWith('/metrics')
