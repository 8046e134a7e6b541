import pg from 'pg'
import { invariant } from '../../base/invariant.ts'

export type PoolOptions = {
  readonly url: string
  readonly max: number
  /** Sends the next statement without waiting for the last answer; such a connection takes no cursors and no COPY. */
  readonly pipeline: boolean
  readonly onTrouble: (fault: Error) => void
}

/** How long a request may wait for a connection before it is told to come again. */
const CONNECT_MS = 5_000
const STATEMENT_MS = 30_000
/** A server that has fallen silent can't end a statement: then this side gives the connection up. */
const SILENCE_MS = 35_000

/**
 * A pool of connections. int8 becomes a number (and a fault beyond 2^53), a date stays text.
 * Idle connections die with their server: without the listener that would end the whole process.
 */
export function createPool({ url, max, pipeline, onTrouble }: PoolOptions): pg.Pool {
  const pool = new pg.Pool({
    connectionString: url,
    max,
    pipeline,
    connectionTimeoutMillis: CONNECT_MS,
    idleTimeoutMillis: 30_000,
    statement_timeout: STATEMENT_MS,
    // Not where COPY runs, which takes as long as it takes.
    ...(pipeline ? { query_timeout: SILENCE_MS } : {}),
    keepAlive: true,
    idle_in_transaction_session_timeout: STATEMENT_MS,
    application_name: 'asfound',
    types: { getTypeParser },
  })
  pool.on('error', onTrouble)
  // A connection that breaks while it is lent says so beside failing its statements, and nobody else listens.
  pool.on('connect', (client) => client.on('error', () => {}))
  return pool
}

const { INT8, DATE } = pg.types.builtins

function getTypeParser(...[oid, format]: Parameters<typeof pg.types.getTypeParser>) {
  if (oid === INT8) return safeInteger
  if (oid === DATE) return asText
  return pg.types.getTypeParser(oid, format)
}

const asText = (text: string): string => text

function safeInteger(text: string): number {
  const value = Number(text)
  invariant(Number.isSafeInteger(value), `${text} is beyond the integers this program holds exactly`)
  return value
}
