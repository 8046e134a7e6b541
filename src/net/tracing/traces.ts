/** What may be told of a span: names and numbers of this program's own, never what somebody sent or what a row holds. */
export type Told = Readonly<Record<string, string | number | boolean>>

export type Span = {
  /** Of the trace that it is part of: 32 hexadecimal digits. */
  readonly traceId: string
  /** Spans begun in `work`, and in what it leaves behind, are below this one. */
  readonly run: <T>(work: () => T) => T
  readonly end: (told?: Told & { readonly name?: string }, failed?: boolean) => void
}

export type Begun = {
  readonly kind?: 'server' | 'client' | 'consumer'
  readonly told?: Told
  /** The headers of a request, which may say of which trace it is (W3C Trace Context). */
  readonly headers?: Readonly<Record<string, string | readonly string[] | undefined>>
  readonly above?: Span
  /** For what is noted when it is over. */
  readonly startedMsAgo?: number
}

/** Where spans are written. Where no receiver is set there is none, and nothing of this is loaded or measured. */
export type Traces = {
  /** Below `above`, or the span in whose `run` this is called, or whatever the headers name; else a trace of its own. */
  readonly begin: (name: string, begun?: Begun) => Span
  /** The span in whose `run` this is called. */
  readonly current: () => Span | undefined
  /** Sends what is not yet sent, for at most two seconds. */
  readonly close: () => Promise<void>
}

/** Work under a span of its own, which has failed when the work throws. */
export async function spanned<T>(
  traces: Traces | undefined,
  name: string,
  begun: Begun,
  work: (span?: Span) => Promise<T>,
): Promise<T> {
  if (!traces) return work()
  const span = traces.begin(name, begun)
  try {
    const result = await span.run(() => work(span))
    span.end()
    return result
  } catch (fault) {
    span.end({ 'error.type': fault instanceof Error ? fault.name : 'unknown' }, true)
    throw fault
  }
}
