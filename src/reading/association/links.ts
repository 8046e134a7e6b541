import type { Box } from '../../records/source.ts'
import type { Field, ToldOf, UnitOf } from './fields.ts'

/** A stretch of a page as its reader saw it. */
export type Stretch = { readonly text: string; readonly box: Box }

/** One value on a page: what it is, of what, why, and what it belongs together with. Scores are 0 to 1. */
export type LinkedValue = Stretch & {
  readonly field: Field
  readonly of: ToldOf
  /** A part that was there before this permit's work. */
  readonly existing: boolean
  readonly unit: UnitOf
  /** The words' own confidence, the least of them. */
  readonly confidence: number
  /** How sure the model is of field and part. */
  readonly score: number
  /** The words that say what it is; null where nothing but its form and place does. */
  readonly label: (Stretch & { readonly score: number }) | null
  /** Which permit of the page, counted from 0 down the page, and how clearly it is that one's. */
  readonly permit: number
  readonly permitScore: number
  /** Which part of that permit; -1 for what is the permit's own. */
  readonly part: number
  readonly partScore: number
  /** A ticked box stands beside it. */
  readonly ticked: boolean
}

/** What a model made of a page's words. The model is named by its hash, so that it is known which one said it. */
export type PageLinks = { readonly model: string; readonly values: readonly LinkedValue[] }
