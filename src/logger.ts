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
      serializers: {
        req: ({ method, url }: { method: string; url: string }) => ({ method, path: pathOf(url) }),
        res: ({ statusCode }: { statusCode: number }) => ({ status: statusCode }),
        err: withoutValues,
      },
    },
    into,
  )

type Described = {
  readonly type: string
  readonly message: string
  readonly stack: string
  readonly code?: string
}

/** PostgreSQL repeats the values of a row in `detail` and `where`; the statement and its place are enough. */
function withoutValues(fault: Error): Described {
  const { type, message, stack, code } = stdSerializers.err(fault) as Described
  return { type, message, stack, ...(code === undefined ? {} : { code }) }
}
