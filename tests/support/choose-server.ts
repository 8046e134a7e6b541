import http from 'node:http'
import os from 'node:os'
import path from 'node:path'
import { PostgreSqlContainer } from '@testcontainers/postgresql'

/** The PostgreSQL the tests run on: a given one, one in a container, or the embedded one, held by each test file. */
export type TestServer =
  | { readonly kind: 'url' | 'container'; readonly url: string }
  | { readonly kind: 'embedded'; readonly dataFolder: string }

type Choice = { readonly server: TestServer; readonly says: string; readonly stop: () => Promise<void> }

const KINDS = ['url', 'container', 'embedded'] as const

/**
 * TEST_DATABASE_URL if given; else a container when a Docker engine answers; else the embedded server.
 * TEST_DATABASE=url|container|embedded insists on one, so that a CI job can't fall through to another unseen.
 */
export async function chooseServer(environment: NodeJS.ProcessEnv): Promise<Choice> {
  const { TEST_DATABASE: forced, TEST_DATABASE_URL: url, TEST_PG_IMAGE: image = 'postgres:18' } = environment
  if (forced && !KINDS.some((kind) => kind === forced)) {
    throw new Error(`TEST_DATABASE is "${forced}"; it may be ${KINDS.join(', ')}`)
  }
  if (forced === 'url' && !url) throw new Error('TEST_DATABASE=url needs TEST_DATABASE_URL')
  const kind = forced ?? (url ? 'url' : (await dockerAnswers(environment)) ? 'container' : 'embedded')
  if (kind === 'url' && url) {
    return { server: { kind, url }, says: 'the PostgreSQL of TEST_DATABASE_URL', stop: async () => {} }
  }
  if (kind === 'container') {
    const container = await new PostgreSqlContainer(image)
      .withCommand(['-c', 'fsync=off', '-c', 'full_page_writes=off', '-c', 'max_connections=300'])
      .start()
    return {
      server: { kind, url: container.getConnectionUri() },
      says: `a container of ${image}`,
      stop: async () => void (await container.stop()),
    }
  }
  const owner = process.getuid?.() ?? 'user'
  const tree = Buffer.from(path.resolve(import.meta.dirname, '../..'))
    .toString('base64url')
    .slice(-24)
  return {
    server: { kind: 'embedded', dataFolder: path.join(os.tmpdir(), `asfound-tests-${owner}-${tree}`) },
    says: 'the embedded PostgreSQL',
    stop: async () => {},
  }
}

/** Whether a Docker engine is there, asked as the engine's own API documents it: GET /_ping says OK. */
function dockerAnswers({ DOCKER_HOST }: NodeJS.ProcessEnv): Promise<boolean> {
  const host = DOCKER_HOST ?? 'unix:///var/run/docker.sock'
  const place = host.startsWith('unix://')
    ? { socketPath: host.slice('unix://'.length) }
    : { host: new URL(host).hostname, port: new URL(host).port || 2375 }
  return new Promise((resolve) => {
    const request = http.get({ ...place, path: '/_ping', timeout: 1_000 }, (response) => {
      response.resume()
      resolve(response.statusCode === 200)
    })
    request.on('timeout', () => request.destroy())
    request.on('error', () => resolve(false))
  })
}
