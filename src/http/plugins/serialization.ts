import { isDeepStrictEqual } from 'node:util'
import fastJsonStringify from 'fast-json-stringify'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { Impossible, invariant } from '../../base/invariant.ts'

/**
 * Answers leave through their schema: what the schema does not name is not sent.
 *
 * `fast` trusts the handler and only writes; `checked`, for tests, also validates by zod and makes sure that
 * the fast writer says exactly the same, so that a test of a route is a test of both.
 */
export function serializeWithZod(app: FastifyInstance, answers: 'fast' | 'checked'): void {
  app.setSerializerCompiler(({ schema, method, url, httpStatus }) => {
    invariant(schema instanceof z.ZodType, `${url}: the response schema is not a zod schema`)
    if (schema instanceof z.ZodUndefined) return () => ''
    const write = (value: unknown) => writerFor(schema)(value)
    if (answers === 'fast') return write
    const where = `${method} ${url} ${httpStatus}`
    return (value) => {
      const checked = schema.safeEncode(value as never)
      if (!checked.success)
        throw new Impossible(`${where}: the answer breaks its schema: ${checked.error.message}`)
      const text = write(value)
      const said: unknown = JSON.parse(text)
      const meant: unknown = JSON.parse(JSON.stringify(checked.data))
      if (!isDeepStrictEqual(said, meant)) {
        throw new Impossible(`${where}: written ${text}, meant ${JSON.stringify(meant)}`)
      }
      return text
    }
  })
}

const writers = new WeakMap<z.ZodType, (value: unknown) => string>()

/** Made when an answer is first written: making all of them would double the time that the service needs to start. */
function writerFor(schema: z.ZodType): (value: unknown) => string {
  const made = writers.get(schema)
  if (made) return made
  const json = z.toJSONSchema(schema, {
    target: 'draft-07',
    io: 'output',
    unrepresentable: 'any',
    reused: 'inline',
  })
  const writer = fastJsonStringify(json as fastJsonStringify.AnySchema)
  writers.set(schema, writer)
  return writer
}
