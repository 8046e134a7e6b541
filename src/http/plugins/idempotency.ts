import { createHash } from 'node:crypto'
import type { FastifyInstance, FastifyReply, FastifyRequest, RouteHandlerMethod } from 'fastify'
import { Impossible, invariant } from '../../base/invariant.ts'
import type { OperationContext } from '../../operations/context.ts'
import type { Database, Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { findAnswer, holdKey, keepAnswer } from '../../store/kept-answers.ts'
import { type Problem, problem } from '../problem.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** A POST that creates: takes Idempotency-Key. Its handler returns its answer and never calls reply.send. */
    idempotent?: boolean
  }
  interface FastifyRequest {
    /** For operations. On an idempotent route its database is the transaction that also keeps the answer. */
    context: OperationContext
  }
}

/** Up to 255 visible ASCII characters; a quoted string, as the last draft of the header has it, or bare. */
const KEY = /^(?:"([!#-~]{1,255})"|([!#-~]{1,255}))$/

/** Headers of an answer that belong to it and come again with it. */
const KEPT = ['location', 'etag', 'content-type']

/**
 * Idempotency-Key: the answer is stored by the transaction that does the work, so that either both are there
 * or neither. A repeat gets the first answer with `Idempotency-Replayed: true`; a repeat with another body
 * 422; one that comes while the first is under way 409. A request that failed is not remembered.
 */
export function keepAnswers(app: FastifyInstance, context: OperationContext): void {
  app.decorateRequest('context', { getter: () => context })
  app.addHook('onRoute', (route) => {
    if (!route.config?.idempotent) return
    if (!route.url.includes(':county'))
      throw new Impossible(`${route.url}: answers are kept by county, and it names none`)
    const { handler } = route
    route.handler = async function (request, reply) {
      const key = keyOf(request)
      if (key === undefined) return handler.call(this, request, reply)
      return transact(context.database, request.actor, (tx, within) =>
        answerOnce(tx, key, request, reply, () => answerWithin(within, context, handler, request, reply)),
      )
    }
  })
}

function keyOf({ headers }: FastifyRequest): string | undefined {
  const sent = headers['idempotency-key']
  if (sent === undefined) return undefined
  const match = KEY.exec(String(sent))
  if (match) return match[1] ?? match[2]
  const message = 'write 1 to 255 visible ASCII characters, as a UUID'
  throw problem('invalid-input', { errors: [{ in: 'header', pointer: '/idempotency-key', message }] })
}

async function answerOnce(
  tx: Tx,
  key: string,
  request: FastifyRequest,
  reply: FastifyReply,
  answer: () => Promise<string>,
): Promise<string> {
  const { county, account } = request.actor
  const of = { county, account, key }
  const hash = fingerprint(request)
  if (!(await holdKey(tx, of))) throw stillWorking()
  const first = await findAnswer(tx, of)
  if (first) {
    if (first.hash !== hash) throw problem('key-reused')
    reply.code(first.status).headers(first.headers).header('idempotency-replayed', 'true')
    return first.body
  }
  const body = await answer()
  const headers = Object.fromEntries(
    KEPT.flatMap((name) => (reply.hasHeader(name) ? [[name, String(reply.getHeader(name))]] : [])),
  )
  await keepAnswer(tx, of, { hash, status: reply.statusCode, headers, body })
  return body
}

/** The answer as text, ready to be kept and sent; the handler works inside the transaction. */
async function answerWithin(
  database: Database,
  context: OperationContext,
  handler: RouteHandlerMethod,
  request: FastifyRequest,
  reply: FastifyReply,
): Promise<string> {
  Object.defineProperty(request, 'context', { value: { ...context, database }, configurable: true })
  const answer: unknown = await handler.call(request.server, request, reply)
  invariant(!reply.sent && answer !== undefined, `${request.routeOptions.url} must return its answer`)
  if (!reply.hasHeader('content-type')) reply.type('application/json; charset=utf-8')
  return reply.serialize(answer) as string
}

const fingerprint = ({ method, url, sentBody }: FastifyRequest): string =>
  createHash('sha256')
    .update(JSON.stringify([method, url, sentBody]))
    .digest('hex')

const stillWorking = (): Problem => problem('still-working', { headers: { 'retry-after': '1' } })
