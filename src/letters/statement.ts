import { z } from 'zod'
import { canonicalText } from '../base/canonical.ts'
import { STATUS_WORDS } from '../reconcile/status.ts'
import { LANGUAGES } from '../words/language.ts'
import { LETTER_KINDS } from './content/frame.ts'

const hash = z.string().regex(/^[0-9a-f]{64}$/, 'is not a SHA-256 as 64 hexadecimal digits')

/**
 * What is signed of a letter: enough to tell, years later and without this service, that this county gave this paper
 * about this parcel on that day, to the byte. Strict, so that nothing unsigned rides along.
 */
export const letterStatement = z.strictObject({
  form: z.literal('asfound-letter-1'),
  kind: z.enum(LETTER_KINDS),
  language: z.enum(LANGUAGES),
  number: z.string(),
  county: z.strictObject({ id: z.string(), name: z.string() }),
  parcel: z.strictObject({ number: z.string(), address: z.string().nullable() }),
  issuedOn: z.iso.date(),
  asOf: z.iso.date(),
  /** The parcel's one word on that day. */
  status: z.enum(STATUS_WORDS),
  /** Where the letter can be checked while the service stands. */
  check: z.string(),
  pdfSha256: hash,
  /** The stored answer it rests on, and the hash of its canonical JSON; null where nothing was on file. */
  reconciliation: z.strictObject({ id: z.string(), sha256: hash }).nullable(),
})
export type LetterStatement = z.output<typeof letterStatement>

/** The statement as the bytes that are signed (RFC 8785): the same statement, the same bytes. */
export const statementText = (statement: LetterStatement): string => canonicalText(statement)
