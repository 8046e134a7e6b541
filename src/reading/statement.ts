import type { Excerpt } from './layout/strip.ts'
import type { Ask, SubjectKind } from './lexicon/sense.ts'
import type { Doubt, FoundHow } from './proposal.ts'

/** What a second reader of the same picture makes of it; `unasked` where there was only one reader. */
export type SecondReading =
  | { readonly says: 'same'; readonly value: string | number }
  | { readonly says: 'other'; readonly value: string | number }
  | { readonly says: 'nothing' }
  | { readonly says: 'unasked' }

/** One thing the paper says, before it is known which component of the record it belongs to. */
export type Statement = {
  readonly ask: Ask
  readonly kind: SubjectKind | null
  readonly ordinal: number | null
  readonly value: string | number
  readonly excerpt: Excerpt
  /** How well label, place and spelling fit together, 0 to 1; the reader's own confidence comes on top. */
  readonly fit: number
  readonly how: FoundHow
  readonly doubts: readonly Doubt[]
  /** Place in the order in which a person reads. */
  readonly order: number
  readonly second?: SecondReading
}

/** A component that the paper names, whether or not it says more of it. */
export type Mentioned = {
  readonly kind: SubjectKind
  readonly ordinal: number | null
  readonly excerpt: Excerpt
  readonly order: number
  /** How it was named: alone as a heading, ticked, in a table's row, or in passing. */
  readonly as: 'heading' | 'tick' | 'row' | 'passing'
  readonly likeness: number
}

export type PageReadings = {
  readonly statements: readonly Statement[]
  readonly mentions: readonly Mentioned[]
}
