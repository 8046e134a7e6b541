import { hash, randomBytes } from 'node:crypto'

/** A new token: 256 random bits, so that neither a slow hash nor a salt would add anything. Shown once, never kept. */
export const newToken = (): string => `asfound_${randomBytes(32).toString('base64url')}`

/** What is kept of a token: SHA-256, 32 bytes. */
export const tokenHash = (token: string): Buffer => hash('sha256', token, 'buffer')
