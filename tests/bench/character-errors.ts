import { rowsOf } from '../../src/reading/layout/rows.ts'
import type { PageWords } from '../../src/reading/page-words.ts'

/**
 * Character error rate: the fewest letters and figures put in, taken out or changed that make what was read into what
 * is printed, over those printed (Levenshtein 1966). Lines in order from the top; spaces, marks and case don't count.
 */
export function characterErrors(printed: PageWords, read: PageWords): number {
  const [truth, seen] = [lettersOf(printed), lettersOf(read)]
  let before = Uint32Array.from({ length: seen.length + 1 }, (_, at) => at)
  for (let row = 1; row <= truth.length; row++) {
    const now = new Uint32Array(seen.length + 1)
    now[0] = row
    for (let column = 1; column <= seen.length; column++) {
      const changed = before[column - 1]! + (truth[row - 1] === seen[column - 1] ? 0 : 1)
      now[column] = Math.min(changed, before[column]! + 1, now[column - 1]! + 1)
    }
    before = now
  }
  return before[seen.length]! / truth.length
}

const lettersOf = (page: PageWords): string =>
  rowsOf({ ...page, readBy: 'text-layer' }, page.words)
    .flatMap(({ phrases }) => phrases.map(({ strip }) => strip.text))
    .join('')
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '')
