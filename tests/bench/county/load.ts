import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import http from 'node:http'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'

export type Served = { readonly port: number; readonly child: ChildProcess }

const SERVE = fileURLToPath(new URL('serve.ts', import.meta.url))

/** Starts a server for a bench and waits for its port. */
export async function serve(
  kind: 'ours' | 'bare',
  url: string,
  environment: Record<string, string> = {},
): Promise<Served> {
  const child = spawn(process.execPath, [SERVE, kind, url], {
    env: { ...process.env, ...environment },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const [line] = (await once(createInterface({ input: child.stdout! }), 'line')) as [string]
  return { port: Number(line), child }
}

export async function stop({ child }: Served): Promise<void> {
  if (child.exitCode !== null) return
  child.kill('SIGTERM')
  await once(child, 'exit')
}

export type Asked = { readonly method: 'GET' | 'POST'; readonly path: () => string; readonly body?: string }

/** Requests a second that are answered with 200, asked over so many connections at once. */
export async function rate(
  ports: readonly number[],
  { method, path, body }: Asked,
  {
    headers = {},
    connections = 16,
    ms = 4_000,
  }: { headers?: Record<string, string>; connections?: number; ms?: number } = {},
): Promise<number> {
  const agent = new http.Agent({ keepAlive: true, maxSockets: Number.POSITIVE_INFINITY })
  const sent = {
    ...headers,
    ...(body === undefined
      ? {}
      : { 'content-type': 'application/json', 'content-length': String(Buffer.byteLength(body)) }),
  }
  const ask = (port: number): Promise<void> =>
    new Promise((resolve, reject) => {
      const request = http.request(
        { port, host: '127.0.0.1', method, path: path(), agent, headers: sent },
        (response) => {
          if (response.statusCode !== 200) reject(new Error(`${method} answered ${response.statusCode}`))
          response.resume().on('end', resolve)
        },
      )
      request.on('error', reject)
      request.end(body)
    })
  const during = async (forMs: number): Promise<number> => {
    const end = performance.now() + forMs
    let done = 0
    await Promise.all(
      Array.from({ length: connections }, async (_, index) => {
        while (performance.now() < end) {
          await ask(ports[index % ports.length]!)
          done += 1
        }
      }),
    )
    return done
  }
  await during(ms / 4)
  const from = performance.now()
  const done = await during(ms)
  agent.destroy()
  return done / ((performance.now() - from) / 1000)
}

/** Two things in turn, so that a busy machine slows both; medians, and the median of their ratios. */
export async function inTurn(
  ours: () => Promise<number>,
  limit: () => Promise<number>,
  rounds = 3,
): Promise<{ readonly ours: number; readonly limit: number; readonly ratio: number }> {
  const samples: { ours: number; limit: number }[] = []
  for (let round = 0; round < rounds; round++) samples.push({ limit: await limit(), ours: await ours() })
  const median = (of: (sample: (typeof samples)[number]) => number) =>
    samples.map(of).sort((a, b) => a - b)[rounds >> 1]!
  return {
    ours: median((it) => it.ours),
    limit: median((it) => it.limit),
    ratio: median((it) => it.ours / it.limit),
  }
}
