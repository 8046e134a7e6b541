import type { FastifyContextConfig } from 'fastify'

type Json = Readonly<Record<string, unknown>>

const SAYS: Readonly<Record<string, string>> = {
  200: 'Done',
  201: 'Made',
  202: 'Accepted: the work runs in the background, as the job in the answer',
  204: 'Done, without a body',
}

const text = (description: string) => ({ type: 'string', description })
const ETAG = text('Version of the resource, for If-Match and If-None-Match')
const LINK = text('`rel="next"`: the next page (RFC 8288)')
const LOCATION = text('Address of the new resource')
const REPLAYED = text('`true` if this is the first answer, repeated for the same Idempotency-Key')

const UNCHANGED = 'Not changed since the version in If-None-Match'

/** What a route sends that declares no answer: bytes of the type that it names. */
const BYTES: Json = { type: 'string', format: 'binary' }

/** Words and headers for the good answers of a route, as far as they follow from what it declares. */
export function describeAnswers(
  method: string | readonly string[],
  config: FastifyContextConfig,
  query: Json | undefined,
  answers: Readonly<Record<string, Json>> | undefined,
): Readonly<Record<string, Json>> {
  const good = Object.keys(answers ?? {}).some((status) => status.startsWith('2'))
  const reads = method === 'GET'
  const pages = 'cursor' in ((query?.properties ?? {}) as object)
  const unchanged: Readonly<Record<string, Json>> =
    reads && config.access !== 'open' ? { 304: { type: 'null', description: UNCHANGED } } : {}
  const described = Object.fromEntries(
    Object.entries(good ? (answers ?? {}) : { ...answers, 200: BYTES }).map(([status, answer]) => {
      const headers = {
        ...(reads || config.replaces ? { etag: ETAG } : {}),
        ...(pages ? { link: LINK } : {}),
        ...(status === '201' || status === '202' ? { location: LOCATION } : {}),
        ...(config.idempotent ? { 'idempotency-replayed': REPLAYED } : {}),
      }
      const says = (answer.description as string | undefined) ?? SAYS[status]
      return [
        status,
        {
          ...answer,
          // A schema of a name loses all but these two beside its reference.
          ...(says === undefined ? {} : { description: says, 'x-response-description': says }),
          ...(Object.keys(headers).length > 0 ? { headers } : {}),
        },
      ]
    }),
  )
  return { ...unchanged, ...described }
}
