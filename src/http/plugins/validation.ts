import type { FastifyInstance, FastifyRequest, RouteOptions } from 'fastify'
import { z } from 'zod'
import { invariant } from '../../base/invariant.ts'
import { readEntry } from '../../reading/entry/read-entry.ts'
import { type Fault, problem } from '../problem.ts'

declare module 'fastify' {
  interface FastifyRequest {
    /** The JSON body as it was sent, before the schema read it; for fingerprints. */
    sentBody: unknown
  }
}

const PARTS = [
  { name: 'path', schema: 'params', property: 'params' },
  { name: 'query', schema: 'querystring', property: 'query' },
  { name: 'body', schema: 'body', property: 'body' },
] as const satisfies readonly { name: Fault['in']; schema: keyof SchemaParts; property: string }[]

type SchemaParts = { params?: unknown; querystring?: unknown; body?: unknown }

/**
 * Validates path, query and body together by their zod schemas, so that one answer names every fault of all
 * three. (The framework would stop at the first part that has one.)
 */
export function validateWithZod(app: FastifyInstance): void {
  app.decorateRequest('sentBody', undefined)
  app.setValidatorCompiler(() => (value) => ({ value }))
  app.addHook('onRoute', (route) => {
    const schemas = partsOf(route)
    if (schemas.length === 0) return
    const check = async (request: FastifyRequest) => {
      boundShape(request.body)
      request.sentBody = request.body
      const faults = schemas.flatMap(({ name, property, schema }) => {
        const read = readEntry(schema, request[property] ?? (name === 'body' ? undefined : {}))
        if (!read.ok) return read.error.map((issue) => ({ in: name, ...issue }))
        request[property] = read.value
        return []
      })
      if (faults.length > 0) throw problem('invalid-input', { errors: faults })
    }
    route.preValidation = [...[route.preValidation ?? []].flat(), check] as RouteOptions['preValidation']
  })
}

/** Nothing that is taken is a fifth as deep; what reads JSON, writes it or compares it calls itself for each level. */
const DEEPEST = 100
const TOO_DEEP = `The body is nested more than ${DEEPEST} levels deep.`

/** Ten times the largest permit or inspection there is: what is done with each of them is done while others wait. */
const MOST_VALUES = 20_000
const TOO_MANY = `The body has more than ${MOST_VALUES} values.`

function boundShape(body: unknown): void {
  let level: readonly unknown[] = [body]
  let values = 0
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) throw problem('unreadable-request', { detail: TOO_DEEP })
    const next: unknown[] = []
    for (const it of level) {
      if (typeof it !== 'object' || it === null || Buffer.isBuffer(it)) continue
      for (const key in it) {
        next.push((it as Record<string, unknown>)[key])
        values += 1
        if (values > MOST_VALUES) throw problem('too-large', { detail: TOO_MANY })
      }
    }
    level = next
  }
}

function partsOf(route: RouteOptions) {
  const declared = (route.schema ?? {}) as SchemaParts
  return PARTS.filter(({ schema }) => declared[schema] !== undefined).map((part) => {
    const schema = declared[part.schema]
    invariant(schema instanceof z.ZodType, `${route.url}: schema.${part.schema} is not a zod schema`)
    return { ...part, schema }
  })
}
