import http from 'node:http'
import type { AddressInfo } from 'node:net'

type Value = { readonly stringValue?: string; readonly intValue?: number; readonly boolValue?: boolean }

export type Received = {
  readonly traceId: string
  readonly spanId: string
  readonly parentSpanId?: string
  readonly name: string
  readonly kind: number
  readonly attributes: Readonly<Record<string, unknown>>
  readonly status: { readonly code?: number }
  readonly ms: number
}

/** Takes in traces as the OpenTelemetry protocol has them over HTTP in JSON (OTLP 1, `ExportTraceServiceRequest`). */
export async function otlpReceiver() {
  const spans: Received[] = []
  const texts: string[] = []
  const server = http.createServer((request, response) => {
    const pieces: Buffer[] = []
    request.on('data', (piece: Buffer) => pieces.push(piece))
    request.on('end', () => {
      const text = Buffer.concat(pieces).toString()
      if (request.method !== 'POST' || request.url !== '/v1/traces') return void response.writeHead(404).end()
      texts.push(JSON.stringify(request.headers), text)
      for (const { scopeSpans } of JSON.parse(text).resourceSpans)
        for (const { spans: some } of scopeSpans) spans.push(...some.map(read))
      response.writeHead(200, { 'content-type': 'application/json' }).end('{}')
    })
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return {
    endpoint: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    spans: spans as readonly Received[],
    /** Everything that came, word for word. */
    text: () => texts.join('\n'),
    close: () => new Promise((resolve) => server.close(resolve)),
  }
}

// biome-ignore lint/suspicious/noExplicitAny: as it came
const read = ({ attributes, startTimeUnixNano, endTimeUnixNano, ...span }: any): Received => ({
  ...span,
  ms: Number(BigInt(endTimeUnixNano) - BigInt(startTimeUnixNano)) / 1e6,
  attributes: Object.fromEntries(
    attributes.map(({ key, value }: { key: string; value: Value }) => [key, Object.values(value)[0]]),
  ),
})
