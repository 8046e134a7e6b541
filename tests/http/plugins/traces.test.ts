import { randomBytes } from 'node:crypto'
import { Writable } from 'node:stream'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { afterAll, expect, test } from 'vitest'
import { buildApp } from '../../../src/http/app.ts'
import { registerRoutes } from '../../../src/http/routes.ts'
import { openJobs } from '../../../src/jobs/start.ts'
import { createLogger } from '../../../src/logger.ts'
import { openTraces } from '../../../src/net/tracing/open-traces.ts'
import { openDatabase } from '../../../src/store/database/database.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { filesUnder, importsOf } from '../../house/source-files.ts'
import { otlpReceiver } from '../../net/tracing/otlp-receiver.ts'
import { testApp } from '../../support/app.ts'
import { newParcel, permit1974 } from '../../support/quillback.ts'

const routes: FastifyPluginAsyncZod = async (app) => {
  app.get('/broken', { config: { access: 'open' } }, async () => {
    throw new Error('canary of a fault')
  })
  await app.register(registerRoutes)
}

const { services, people, url } = await testApp()
const receiver = await otlpReceiver()
const traces = openTraces({ endpoint: receiver.endpoint, share: 1, version: '1', everyMs: 50 })
const lines: string[] = []
const into = new Writable({
  write: (chunk, _, done) => {
    lines.push(String(chunk))
    done()
  },
})
const onTrouble = () => {}
const database = openDatabase({ url, maxConnections: 4, onTrouble, traces })
const app = await buildApp({ ...services, database, traces, logger: createLogger('info', into) }, routes)
const origin = await app.listen({ host: '127.0.0.1', port: 0 })
afterAll(async () => {
  await app.close()
  await traces.close()
  await database.close()
  await receiver.close()
})

const spanNamed = async (name: string) => {
  await expect.poll(() => receiver.spans.some((it) => it.name === name), { timeout: 5_000 }).toBe(true)
  return receiver.spans.findLast((it) => it.name === name)!
}
const below = (id: string) => receiver.spans.filter((it) => it.parentSpanId === id)

/** The kinds and the status of a fault, as numbered in the protocol's `trace.proto`. */
const [SERVER, CLIENT, CONSUMER, FAILED] = [2, 3, 5, 2]

test('a request is a span with route and status, and what it asked of the database are spans below it', async () => {
  const { number } = await newParcel(services)
  const headers = {
    authorization: `Bearer ${people.reviewer.token}`,
    'content-type': 'application/json',
    'idempotency-key': 'canary-key',
    'x-strange': 'canary-header',
    cookie: 'canary=cookie',
    traceparent: '00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01',
  }
  const answer = await fetch(`${origin}/v1/counties/quillback/parcels/${number}/permits?canary=query`, {
    method: 'POST',
    headers,
    body: JSON.stringify({ ...permit1974, number: 'canary-body', remarks: 'canary words' }),
  })
  expect(answer.status).toBe(201)
  const route = '/v1/counties/:county/parcels/:parcel/permits'
  const request = await spanNamed(`POST ${route}`)
  expect(request).toMatchObject({
    kind: SERVER,
    // Of the trace that the request named (the example of W3C Trace Context, 3.2.2.3).
    traceId: '0af7651916cd43dd8448eb211c80319c',
    parentSpanId: 'b7ad6b7169203331',
    attributes: {
      'http.request.method': 'POST',
      'http.route': route,
      'http.response.status_code': 201,
      'asfound.request_id': answer.headers.get('x-request-id'),
    },
  })
  const transactions = below(request.spanId)
  expect(transactions.length).toBeGreaterThan(0)
  for (const it of transactions)
    expect(it).toMatchObject({ kind: CLIENT, attributes: { 'db.system.name': 'postgresql' } })
  const statements = transactions.flatMap((it) => below(it.spanId))
  expect(statements.map((it) => it.name)).toEqual(
    expect.arrayContaining(['insert permit', 'insert idempotency_key', 'insert reconciliation']),
  )
  for (const it of statements) {
    expect(it.traceId).toBe(request.traceId)
    expect(it.ms).toBeLessThanOrEqual(request.ms + 5)
  }
  const line = lines.find((it) => it.includes(answer.headers.get('x-request-id')!))
  expect(JSON.parse(line ?? '{}')).toMatchObject({ traceId: request.traceId })
})

test('nothing that was sent, and nothing that names anybody, is in what is told', async () => {
  const { number } = await newParcel(services)
  await fetch(`${origin}/v1/counties/quillback/parcels/${number}/status?canary=query`, {
    headers: { authorization: `Bearer ${people.firm.token}` },
  })
  await spanNamed('GET /v1/counties/:county/parcels/:parcel/status')
  const { account, organization, token } = people.reviewer
  for (const it of ['canary', number, token, account, organization, people.firm.token, '127.0.0.1'])
    expect(receiver.text().replaceAll(/"host":"127[^"]*"/g, '')).not.toContain(it)
})

test('a fault marks its span and says no more', async () => {
  expect((await fetch(`${origin}/v1/broken`)).status).toBe(500)
  expect(await spanNamed('GET /v1/broken')).toMatchObject({
    status: { code: FAILED },
    attributes: { 'http.response.status_code': 500 },
  })
  expect(receiver.text()).not.toContain('canary of a fault')
})

test('what watches the service, and what it does by itself, is no trace', async () => {
  await fetch(`${origin}/health/ready`)
  await transact(database, people.reviewer, (tx) => tx.selectFrom('parcel').select('id').limit(1).execute())
  await fetch(`${origin}/v1/nothing-here`)
  await spanNamed('GET')
  expect(receiver.spans.filter((it) => /health/.test(it.name))).toEqual([])
  expect(receiver.spans.filter((it) => it.kind === CLIENT && it.parentSpanId === undefined)).toEqual([])
})

test('a job is a trace of its own, with what it asks of the database', async () => {
  const jobs = await openJobs({ ...services, database, url, atOnce: 1, onTrouble, traces })
  await jobs.work({
    'reconcile-parcel': ({ actor }) =>
      transact(database, actor, (tx) => tx.selectFrom('parcel').select('id').limit(1).execute()),
  })
  await transact(database, people.reviewer, (tx) =>
    jobs.enqueue(tx, people.reviewer, 'reconcile-parcel', { parcel: 'p', occasion: 'asked-for' }),
  )
  const job = await spanNamed('job reconcile-parcel')
  expect(job.kind).toBe(CONSUMER)
  expect(below(job.spanId).flatMap((it) => below(it.spanId).map(({ name }) => name))).toContain(
    'select parcel',
  )
  await jobs.stop(2_000)
})

test('a receiver that is away costs no request anything, and no stop more than two seconds', async () => {
  const away = openTraces({ endpoint: 'http://127.0.0.1:9', share: 1, version: '1', everyMs: 10 })
  const other = await buildApp({ ...services, traces: away })
  const from = performance.now()
  for (let i = 0; i < 50; i++) expect((await other.inject('/v1/nothing')).statusCode).toBe(404)
  expect(performance.now() - from).toBeLessThan(2_000)
  await other.close()
  const closing = performance.now()
  await away.close()
  expect(performance.now() - closing).toBeLessThan(2_500)
})

test('of no traces none is sent', async () => {
  const quiet = await otlpReceiver()
  const none = openTraces({ endpoint: `${quiet.endpoint}/`, share: 0, version: '1', everyMs: 10 })
  const other = await buildApp({ ...services, traces: none })
  await other.inject(`/v1/${randomBytes(4).toString('hex')}`)
  await other.close()
  await none.close()
  expect(quiet.spans).toEqual([])
  await quiet.close()
})

test('the library is loaded by one file, and that one only where a receiver is set', () => {
  const files = filesUnder('src')
  const ofLibrary = files.filter((file) =>
    importsOf(file).some(({ what }) => what.startsWith('@opentelemetry/')),
  )
  expect(ofLibrary).toEqual(['src/net/tracing/open-traces.ts'])
  const askers = files.filter((file) => importsOf(file).some(({ what }) => what === ofLibrary[0]))
  expect(askers).toEqual(['src/service.ts'])
})
