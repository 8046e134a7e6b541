import type { Ask, SubjectKind } from './asks.ts'
import type { Excerpt } from './layout/strip.ts'
import type { Doubt, FoundHow, Why } from './proposal.ts'

/** What a second reader of the same picture makes of it; `unasked` where there was only one reader. */
export type SecondReading =
  | { readonly says: 'same'; readonly value: string | number; readonly sure: number }
  | { readonly says: 'other'; readonly value: string | number }
  | { readonly says: 'nothing' }
  | { readonly says: 'unasked' }

/** One thing the paper says, before it is known which component of the record it belongs to. */
export type Statement = {
  readonly ask: Ask
  readonly kind: SubjectKind | null
  /** Which part of the paper it is told of, where several are of one kind; null where the paper does not say. */
  readonly ordinal: number | null
  /** Told of a part that was there before this permit's work. */
  readonly existing: boolean
  readonly value: string | number
  readonly excerpt: Excerpt
  /** How well label, place and spelling fit together, 0 to 1; the reader's own confidence comes on top. */
  readonly fit: number
  readonly how: FoundHow
  readonly why: Why
  readonly doubts: readonly Doubt[]
  /** Place in the order in which a person reads. */
  readonly order: number
  readonly second?: SecondReading
}

/** A component that the paper names, whether or not it says more of it. */
export type Mentioned = {
  readonly kind: SubjectKind
  readonly ordinal: number | null
  readonly existing: boolean
  readonly excerpt: Excerpt
  readonly order: number
  /** By a tick, or by name. */
  readonly as: 'tick' | 'named'
  readonly likeness: number
}

export type PageReadings = {
  readonly statements: readonly Statement[]
  readonly mentions: readonly Mentioned[]
}
