import type { Day, GeneratedInstant, Instant, Json, MaybeInstant } from './column.ts'

/** Letters and the keys that sealed them. */
export type LetterTables = {
  readonly signing_key: SigningKeyTable
  readonly letter_counter: LetterCounterTable
  readonly letter: LetterTable
  readonly letter_withdrawal: LetterWithdrawalTable
}

type SigningKeyTable = {
  kid: string
  public_jwk: Json
  first_used_at: GeneratedInstant
  retired_at: MaybeInstant
}

type LetterCounterTable = { county: string; year: number; last: number }

type LetterTable = {
  county: string
  id: string
  parcel: string
  kind: 'status' | 'report' | 'brief'
  number: string
  code: string
  organization: string
  issued_by: string
  issued_on: Day
  as_of: Day
  word: string
  reconciliation: string | null
  content: Json
  facts: Json
  pdf_sha256: string
  pdf_bytes: number
  pages: number
  signature: string
  signing_key: string
  issued_at: Instant
}

type LetterWithdrawalTable = {
  county: string
  letter: string
  reason: string
  withdrawn_by: string
  withdrawn_at: Instant
}
