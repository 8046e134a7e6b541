import { AsyncLocalStorage } from 'node:async_hooks'
import { setTimeout as wait } from 'node:timers/promises'
import { type Span as Noted, ROOT_CONTEXT, SpanKind, SpanStatusCode, trace } from '@opentelemetry/api'
import { W3CTraceContextPropagator } from '@opentelemetry/core'
import { OTLPTraceExporter } from '@opentelemetry/exporter-trace-otlp-http'
import { resourceFromAttributes } from '@opentelemetry/resources'
import { BatchSpanProcessor, TraceIdRatioBasedSampler, TracerProvider } from '@opentelemetry/sdk-trace'
import type { Span, Traces } from './traces.ts'

export type TracesOptions = {
  /** The base address of a receiver of OTLP over HTTP; traces go to `/v1/traces` below it. */
  readonly endpoint: string
  /** Of how many traces one is kept, from 0 to 1. */
  readonly share: number
  readonly version: string
  readonly everyMs?: number
}

const KINDS = { server: SpanKind.SERVER, client: SpanKind.CLIENT, consumer: SpanKind.CONSUMER } as const
const CLOSE_MS = 2_000

/**
 * Traces by OpenTelemetry, sent as OTLP (JSON over HTTP). Spans are sent by and by; a receiver that is away is tried again
 * a few times, and then they are dropped: no request waits for it. Load this file only where an endpoint is set.
 */
export function openTraces({ endpoint, share, version, everyMs = 2_000 }: TracesOptions): Traces {
  const exporter = new OTLPTraceExporter({ url: `${endpoint.replace(/\/$/, '')}/v1/traces` })
  const provider = new TracerProvider({
    resource: resourceFromAttributes({ 'service.name': 'asfound', 'service.version': version }),
    sampler: new TraceIdRatioBasedSampler(share),
    spanProcessors: [new BatchSpanProcessor({ exporter, scheduledDelayMillis: everyMs })],
  })
  const tracer = provider.getTracer('asfound', version)
  const propagator = new W3CTraceContextPropagator()
  const current = new AsyncLocalStorage<Span>()
  const notedOf = new WeakMap<Span, Noted>()

  const begin: Traces['begin'] = (name, { kind, told, headers, above, startedMsAgo } = {}) => {
    const parent = notedOf.get(above ?? current.getStore() ?? NONE)
    const context = parent
      ? trace.setSpan(ROOT_CONTEXT, parent)
      : headers
        ? propagator.extract(ROOT_CONTEXT, headers, HEADERS)
        : ROOT_CONTEXT
    const noted = tracer.startSpan(
      name,
      {
        ...(kind ? { kind: KINDS[kind] } : {}),
        ...(told ? { attributes: told } : {}),
        ...(startedMsAgo === undefined ? {} : { startTime: Date.now() - startedMsAgo }),
      },
      context,
    )
    const span: Span = {
      traceId: noted.spanContext().traceId,
      run: (work) => current.run(span, work),
      end: ({ name: better, ...more } = {}, failed = false) => {
        if (better !== undefined) noted.updateName(better)
        noted.setAttributes(more as Readonly<Record<string, string>>)
        if (failed) noted.setStatus({ code: SpanStatusCode.ERROR })
        noted.end()
      },
    }
    notedOf.set(span, noted)
    return span
  }
  return {
    begin,
    current: () => current.getStore(),
    close: async () => {
      const done = provider.shutdown().catch(() => {})
      await Promise.race([done, wait(CLOSE_MS, undefined, { ref: false })])
    },
  }
}

const NONE: Span = { traceId: '', run: (work) => work(), end: () => {} }

type Headers = Readonly<Record<string, string | readonly string[] | undefined>>
const HEADERS = {
  keys: (headers: Headers) => Object.keys(headers),
  get: (headers: Headers, name: string) => headers[name] as string | undefined,
}
