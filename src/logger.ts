import { type DestinationStream, type Logger, pino, stdSerializers } from 'pino'
import type { Settings } from './config.ts'

/** The address without its query, which may hold what somebody searched for. */
const pathOf = (url: string): string => url.split('?')[0] ?? url

/**
 * One JSON object a line on standard output. No token, password or personal data: headers, queries, bodies and
 * network addresses are not logged at all, and of a database fault not the values it names.
 */
export const createLogger = (
  level: Settings['LOG_LEVEL'],
  into: DestinationStream = pino.destination(1),
): Logger =>
  pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      redact: ['*.authorization', '*.cookie', '*.token', '*.password', '*.connectionString'],
      formatters: { log: knownFields },
      serializers: {
        req: ({ method, url }: { method: string; url: string }) => ({ method, path: pathOf(url) }),
        res: ({ statusCode }: { statusCode: number }) => ({ status: statusCode }),
        err: withoutValues,
      },
    },
    into,
  )

/** What this program logs. What a library adds of its own, at `trace` whole requests, stays out. */
const FIELDS: ReadonlySet<string> = new Set(['req', 'res', 'ms', 'err', 'ran', 'reason', 'county'])

const knownFields = (line: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(line).filter(([name]) => FIELDS.has(name)))

type Described = {
  readonly type: string
  readonly message: string
  readonly stack: string
  readonly code?: string
}

/**
 * PostgreSQL repeats the values of a row in `detail` and `where`, and a value that it can't read (SQLSTATE class 22) in
 * the message itself; the statement and its place are enough.
 */
function withoutValues(fault: Error): Described {
  const { type, message, stack, code } = stdSerializers.err(fault) as Described
  const told = (text: string) => (code?.startsWith('22') ? text.replaceAll(/"(?:[^"]|"")*"/g, '"…"') : text)
  return { type, message: told(message), stack: told(stack), ...(code === undefined ? {} : { code }) }
}
