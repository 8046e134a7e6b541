import http from 'node:http'
import type { AddressInfo } from 'node:net'
import { buffer } from 'node:stream/consumers'
import { afterAll } from 'vitest'

/** What happens on the way: all arrives; it arrives and the answer is lost; nothing arrives. */
export type Fate = 'answered' | 'answer-lost' | 'lost'

export type LossyProxy = {
  readonly origin: string
  /** Decides about requests from now on; by itself everything arrives. */
  lose: (fate: (method: string, path: string) => Fate) => void
  /** Requests that reached the service, as `POST /v1/…`. */
  readonly reached: string[]
}

/** A weak signal between a browser and the service: whole requests and whole answers get lost, and the line breaks. */
export async function lossyProxy(service: string): Promise<LossyProxy> {
  let fateOf: (method: string, path: string) => Fate = () => 'answered'
  const reached: string[] = []
  const { hostname, port } = new URL(service)
  const server = http.createServer(async (request, response) => {
    const { method = 'GET', url = '/', headers } = request
    const fate = fateOf(method, url)
    if (fate === 'lost') return void response.destroy()
    const body = await buffer(request)
    reached.push(`${method} ${url}`)
    const onward = http.request({ hostname, port, method, path: url, headers }, async (answer) => {
      const bytes = await buffer(answer)
      if (fate === 'answer-lost') return void response.destroy()
      response.writeHead(answer.statusCode ?? 502, answer.rawHeaders)
      response.end(bytes)
    })
    onward.on('error', () => response.destroy())
    onward.end(body)
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  afterAll(() => {
    server.closeAllConnections()
    server.close()
  })
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    lose: (fate) => {
      fateOf = fate
    },
    reached,
  }
}
