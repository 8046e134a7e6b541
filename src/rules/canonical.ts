import { canonicalize } from 'json-canonicalize'
import type { RuleBook } from './book.ts'

/**
 * The book as one text that is the same for the same rules, whatever order the files were read in (RFC 8785). What is
 * hashed to say by which rules a reconciliation was made; the hashing is done above the fire line.
 */
export const canonicalText = (book: RuleBook): string =>
  canonicalize([...book.packs.values()].sort((a, b) => (a.pack < b.pack ? -1 : 1)))
