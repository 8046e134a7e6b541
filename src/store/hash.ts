import { hash } from 'node:crypto'
import { canonicalText } from '../base/canonical.ts'

/** SHA-256 of the canonical text, 64 hex digits. */
export const hashOf = (value: unknown): string => sha256(canonicalText(value))

export const sha256 = (text: string): string => hash('sha256', text, 'hex')
