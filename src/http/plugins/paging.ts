import type { FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import { problem } from '../problem.ts'

export const MOST_PER_PAGE = 500

/** Query fields of a list; spread into the list's own: `z.object({ ...pageQuery, state: ... })`. */
export const pageQuery = {
  limit: z.coerce
    .number('write a whole number')
    .int('write a whole number')
    .min(1, 'at least 1')
    .max(MOST_PER_PAGE, `at most ${MOST_PER_PAGE}`)
    .default(50)
    .meta({ description: 'The most items to return', examples: [50] }),
  cursor: z
    .string()
    .max(1_000, 'is not a cursor of this list')
    .optional()
    .meta({ description: 'The next page: taken from the address in `next`' }),
}

/** The answer of a list: a page and the address of the next one, which is also in the Link header. */
export const pageOf = <T extends z.ZodType>(item: T) =>
  z.object({
    items: z.array(item),
    next: z.string().nullable().meta({ description: 'Address of the next page; null on the last' }),
  })

export type Page<T> = { readonly items: readonly T[]; readonly next: string | null }

/**
 * Reads the cursor of a request by the schema of the sort key that the list goes by; undefined on the first
 * page. A cursor that is not one of this list's is bad input.
 */
export function cursorFrom<K extends z.ZodType>(request: FastifyRequest, key: K): z.output<K> | undefined {
  const { cursor } = request.query as { readonly cursor?: string }
  if (cursor === undefined) return undefined
  const parsed = key.safeParse(decoded(cursor))
  if (parsed.success) return parsed.data
  const message = 'is not a cursor of this list: take it from the address in `next`, with the same filters'
  throw problem('invalid-input', { errors: [{ in: 'query', pointer: '/cursor', message }] })
}

function decoded(cursor: string): unknown {
  try {
    return JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8'))
  } catch {
    return undefined
  }
}

/**
 * A page of `rows`, of which the caller asked the database for one more than `limit`: whether that one came
 * says whether there is a next page. `keyOf` gives the sort key of a row, as `cursorFrom` reads it back.
 */
export function pageFrom<Row, T>(
  request: FastifyRequest,
  reply: FastifyReply,
  rows: readonly Row[],
  keyOf: (row: Row) => unknown,
  present: (row: Row) => T,
): { items: T[]; next: string | null } {
  const { limit } = request.query as { readonly limit: number }
  const shown = rows.slice(0, limit)
  const last = shown.at(-1)
  const items = shown.map(present)
  if (rows.length <= limit || last === undefined) return { items, next: null }
  const address = new URL(request.url, 'http://here')
  address.searchParams.set('cursor', Buffer.from(JSON.stringify(keyOf(last))).toString('base64url'))
  const next = `${address.pathname}${address.search}`
  reply.header('link', `<${next}>; rel="next"`)
  return { items, next }
}
