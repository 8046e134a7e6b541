import type { PageWords, Word } from '../page-words.ts'
import { plain } from './alike.ts'
import { lineUp } from './line-up.ts'
import { overlaps } from './places-of.ts'

/** Words at the same place that two filled-in papers must share, and the share of the words of the shorter one. */
const LEAST_SHARED = 12
const LEAST_SHARE = 0.45

/** Are two filled-in pages one form? Told by the words that they have at the same places. */
export function isSameForm(one: PageWords, other: PageWords): boolean {
  const [ours, theirs] = [printOf(one), printOf(other)]
  const fit = lineUp(ours, one, theirs, other)
  if (!fit || fit.pairs < LEAST_SHARED) return false
  return fit.pairs >= LEAST_SHARE * Math.min(tellable(ours), tellable(theirs))
}

/** A register is filled in more than it prints: there, what was linked as a value of something is left out. */
function printOf({ words, links }: PageWords): readonly Word[] {
  const values = links?.values ?? []
  if (new Set(values.map(({ permit }) => permit)).size < 2) return words
  return words.filter(({ box }) => !values.some((value) => overlaps(value.box, box)))
}

/** Different words of letters that a page has: only these can be told apart on another. */
const tellable = (words: readonly Word[]): number =>
  new Set(words.map(({ text }) => plain(text)).filter((text) => text.length >= 3 && /[a-z]/.test(text))).size
