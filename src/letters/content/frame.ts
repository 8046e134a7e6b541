import type { PlainDate } from '../../base/plain-date.ts'
import type { Language } from '../../words/language.ts'

export const LETTER_KINDS = ['status', 'report', 'brief'] as const
export type LetterKind = (typeof LETTER_KINDS)[number]

/** What each kind is called on paper. */
export const LETTER_TITLES: { readonly [K in LetterKind]: string } = {
  status: 'Status letter',
  report: 'Reconciliation report',
  brief: 'Inspection brief',
}

/** What is the same on every letter: whose it is, about what, and where it can be checked. */
export type LetterFrame = {
  readonly kind: LetterKind
  readonly language: Language
  readonly title: string
  /** Counted per county and year: `2026-00017`. */
  readonly number: string
  readonly county: string
  readonly parcel: { readonly number: string; readonly address: string | null }
  readonly issuedOn: PlainDate
  /** The day the letter speaks of. */
  readonly asOf: PlainDate
  readonly issued: string
  readonly asOfInWords: string
  /** As it is typed: four groups of four. */
  readonly code: string
  /** The address that the QR code carries and that a person can type. */
  readonly checkAddress: string
  readonly checkSvg: { readonly svg: string }
}
