import { createHash } from 'node:crypto'
import { canonicalize } from 'json-canonicalize'

/**
 * One text for one value, whatever order its keys were made in (RFC 8785). Goes through JSON first: what is stored is
 * JSON, and the canonicalizer takes an object that stands in two places for a circle when one path begins the other.
 */
export const canonicalText = (value: unknown): string => canonicalize(JSON.parse(JSON.stringify(value)))

/** SHA-256 of the canonical text, 64 hex digits. */
export const hashOf = (value: unknown): string => sha256(canonicalText(value))

export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')
