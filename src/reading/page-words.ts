import type { Box } from '../records/source.ts'
import type { PageLinks } from './association/links.ts'

/** One word as a reader of the page saw it: its text, where it lies, and how sure that reader is, 0 to 1. */
export type Word = {
  readonly text: string
  readonly box: Box
  readonly confidence: number
  /** A line is drawn through it on the picture. */
  readonly struck?: true
}

/**
 * The words of one page. Boxes are fractions of the page as a person is shown it, upright, origin at the top left.
 * `text-layer`: the file's own text; `picture`: recognized from the picture of the page.
 */
export type PageWords = {
  /** Counted from 1. */
  readonly page: number
  readonly widthPt: number
  readonly heightPt: number
  /** Degrees clockwise that bring the page upright, and then level; boxes are of the page so turned. */
  readonly turn: 0 | 90 | 180 | 270
  readonly levelDegrees: number
  readonly readBy: 'text-layer' | 'picture'
  readonly words: readonly Word[]
  /** The same picture through a second, independent reader; null where there was only one. */
  readonly secondWords: readonly Word[] | null
  /** What the words are and which belong together, as the model in force had it; none on pages read before there was one. */
  readonly links?: PageLinks
}
