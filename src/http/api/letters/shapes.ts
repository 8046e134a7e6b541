import { z } from 'zod'
import { LETTER_KINDS } from '../../../letters/content/frame.ts'
import { SINCE } from '../../../letters/facts.ts'
import { LETTER_STATES, type LetterChecked } from '../../../operations/letters/check-letter.ts'
import { STATUS_WORDS } from '../../../reconcile/status.ts'
import type { Letter } from '../../../store/letters.ts'
import type { Parcel } from '../../../store/parcels.ts'
import { LANGUAGES } from '../../../words/language.ts'
import { day, id, instant } from '../shapes/basics.ts'
import { systemAskedFor } from '../shapes/system.ts'

const EXAMPLE_CODE = 'H7KQ-3MXR-9CWT-4FJD'

export const letterBody = z
  .strictObject({
    kind: z.enum(LETTER_KINDS).meta({
      description:
        'status: one page for anyone. report: everything with its evidence, for the firm whose findings it rests on and for reviewers. brief: what to know before an inspection, for firms and reviewers',
    }),
    system: systemAskedFor.optional().meta({
      description: 'Of a report or brief, where the parcel has several; a status letter speaks of all',
    }),
    language: z
      .enum(LANGUAGES)
      .default('en')
      .meta({ description: 'Of a status letter. English governs; a letter in Spanish says so' }),
  })
  .meta({ id: 'LetterWanted', examples: [{ kind: 'status' }, { kind: 'status', language: 'es' }] })

export const withdrawalBody = z
  .strictObject({
    reason: z
      .string()
      .trim()
      .min(5, 'say why, so that whoever holds the letter understands it')
      .max(500, 'at most 500 characters')
      .meta({ description: 'Shown to everyone who checks the letter: nothing private' }),
  })
  .meta({ id: 'LetterWithdrawal', examples: [{ reason: 'Issued for the wrong parcel.' }] })

const code = z.string().meta({ description: 'As the letter carries it', examples: [EXAMPLE_CODE] })
const sha256 = z.string().meta({ description: 'SHA-256, 64 hexadecimal digits' })
const signature = z.string().meta({
  description:
    'JWS in compact form (RFC 7515), Ed25519; its payload is the statement as canonical JSON (RFC 8785). The keys are at /.well-known/jwks.json',
})

export const letter = z
  .object({
    id,
    kind: z.enum(LETTER_KINDS),
    number: z.string().meta({ description: 'Counted per county and year', examples: ['2026-00017'] }),
    parcel: z.object({ id, number: z.string() }),
    issuedOn: day,
    issuedAt: instant,
    asOf: day,
    status: z.enum(STATUS_WORDS).meta({ description: 'The parcel’s one word when it was issued' }),
    code,
    checkAddress: z.string().meta({ description: 'Where anyone who holds the code can check the letter' }),
    pdf: z.string().meta({ description: 'Address of the PDF' }),
    pdfSha256: sha256,
    pdfBytes: z.number(),
    pages: z.number(),
    signature,
    withdrawn: z.object({ at: instant, reason: z.string() }).nullable(),
  })
  .meta({ id: 'Letter' })

export const presentLetter = (
  parcel: Pick<Parcel, 'id' | 'number'>,
  it: Letter,
  checkAddress: (code: string) => string,
): z.output<typeof letter> => ({
  id: it.id,
  kind: it.kind,
  number: it.number,
  parcel: { id: parcel.id, number: parcel.number },
  issuedOn: it.issuedOn,
  issuedAt: it.issuedAt.toISOString(),
  asOf: it.asOf,
  status: it.word,
  code: it.code,
  checkAddress: checkAddress(it.code),
  pdf: `/v1/letters/${it.id}.pdf`,
  pdfSha256: it.pdfSha256,
  pdfBytes: it.pdfBytes,
  pages: it.pages,
  signature: it.signature,
  withdrawn: it.withdrawn && { at: it.withdrawn.at.toISOString(), reason: it.withdrawn.reason },
})

export const verification = z
  .object({
    state: z.enum(LETTER_STATES).meta({
      description:
        'valid: it says what the file says. superseded: it is genuine, and something has come in since. withdrawn: the county took it back',
    }),
    checkedAt: instant,
    since: z
      .array(z.enum(SINCE))
      .meta({ description: 'What has changed since it was issued: that it did, not how' }),
    newer: z
      .object({ number: z.string(), issuedOn: day })
      .nullable()
      .meta({ description: 'A later letter that stands in its place' }),
    withdrawn: z.object({ on: day, reason: z.string() }).nullable(),
    signature,
  })
  .meta({ id: 'LetterVerification' })

export const presentVerification = (it: LetterChecked): z.output<typeof verification> => ({
  state: it.state,
  checkedAt: it.checkedAt.toISOString(),
  since: [...it.since],
  newer: it.newer && { ...it.newer },
  withdrawn: it.withdrawn && { ...it.withdrawn },
  signature: it.signature,
})
