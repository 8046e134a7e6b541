import { err, type Result } from '../../base/result.ts'

/**
 * Why a written quantity was not taken: `message` says what is wrong and what to write; `readings` are the ways it
 * could have been meant, each written so that it would be accepted.
 */
export type ParseIssue = { readonly message: string; readonly readings?: readonly string[] }

/** A refusal. */
export function refuse(message: string, readings: readonly string[] = []): Result<never, ParseIssue> {
  return err(readings.length === 0 ? { message } : { message, readings })
}

/** What the person wrote, cut to a length that fits a message. */
export const quoted = (text: string): string => `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`

/** A refusal with what could have been meant, in one sentence. */
export const withReadings = ({ message, readings }: ParseIssue): string =>
  readings?.length ? `${message}. It could be ${readings.join(' or ')}` : message
