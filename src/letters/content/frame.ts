import type { PlainDate } from '../../base/plain-date.ts'

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
  /** The address that the square of dots carries and that a person can type. */
  readonly checkAddress: string
  readonly checkSvg: { readonly svg: string }
}

/** What the paper says of its own seal. */
export const SEAL_NOTE =
  'This letter is sealed by an electronic signature in place of one by hand. To learn whether it is genuine and ' +
  'still stands, point a phone at the square or type the address. The answer names what has come in since.'
