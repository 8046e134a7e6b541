import { OutsideFailure } from '../../base/outside-failure.ts'

type Fault = Partial<Pick<Error, 'message'>> & { readonly code?: string }

/**
 * SQLSTATE classes and codes that speak of the server, not of the statement. 25006, a write where only reading is allowed:
 * the address is a standby's that has not yet been made the primary.
 */
const OUTSIDE = /^(08|53|57P|58|XX|57014|55P03|25006)/
const NETWORK = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOENT',
  'EPIPE',
  'ETIMEDOUT',
  'ENOTFOUND',
  'EAI_AGAIN',
])
const BROKEN =
  /connection terminated|timeout exceeded when trying to connect|connection error|client was closed|query read timeout/i

/** Two transactions met and one had to give way; running it again is right. */
export const isCollision = (fault: unknown): boolean =>
  ['40001', '40P01'].includes((fault as Fault | undefined)?.code ?? '')

/** SQLSTATE 23505: somebody else was first. `constraint` is the name of the index. */
export const isDuplicate = (fault: unknown, constraint?: string): boolean =>
  (fault as Fault | undefined)?.code === '23505' &&
  (constraint === undefined || (fault as { constraint?: string }).constraint === constraint)

/** What the database threw, as an OutsideFailure when it is gone, starting, full or too slow; else unchanged. */
export function outsideIfGone(fault: unknown): unknown {
  const { code = '', message = '' } = (fault ?? {}) as Fault
  const gone = OUTSIDE.test(code) || NETWORK.has(code) || BROKEN.test(message)
  if (!gone || fault instanceof OutsideFailure) return fault
  return new OutsideFailure('The database is not available', { cause: fault, retryAfterSeconds: 5 })
}
