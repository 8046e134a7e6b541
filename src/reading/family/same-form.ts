import type { PageWords } from '../page-words.ts'
import { plain } from './alike.ts'
import { lineUp } from './line-up.ts'

/** Words at the same place that two filled-in papers must share, and the share of the words of the shorter one. */
const LEAST_SHARED = 12
const LEAST_SHARE = 0.45

/** Are two filled-in pages one form? Told by the words that they have at the same places. */
export function isSameForm(one: PageWords, other: PageWords): boolean {
  const fit = lineUp(one.words, one, other.words, other)
  if (!fit || fit.pairs < LEAST_SHARED) return false
  return fit.pairs >= LEAST_SHARE * Math.min(tellable(one), tellable(other))
}

/** Different words of letters that a page has: only these can be told apart on another. */
const tellable = ({ words }: PageWords): number =>
  new Set(words.map(({ text }) => plain(text)).filter((text) => text.length >= 3 && /[a-z]/.test(text))).size
