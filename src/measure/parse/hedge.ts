import type { Token } from './tokens.ts'

const ABOUT = new Set(['about', 'approx', 'approximately', 'appr', 'abt', 'ca', 'circa', '~', '≈'])
const BOUND = new Set('> < ≥ ≤ over under above below min max minimum maximum least most up'.split(' '))

/**
 * Takes out "about", "approx.", "more or less", `~`, and a `±` that no number follows or that leads (`±40 ft`), and
 * says whether there was one.
 */
export function withoutAbout(list: readonly Token[]): {
  readonly list: readonly Token[]
  readonly about: boolean
} {
  const words = list.map((token) => token.text.toLowerCase())
  const moreOrLess = words.findIndex(
    (word, i) => word === 'more' && words[i + 1] === 'or' && words[i + 2] === 'less',
  )
  const numberAfter = (at: number) => list.slice(at + 1).some((token) => token.kind === 'number')
  const hedges = list.map((token, i) => {
    if (token.kind === 'number') return false
    if (token.text === '+-') return i === 0 || !numberAfter(i)
    return ABOUT.has(words[i]!) || (moreOrLess >= 0 && i >= moreOrLess && i < moreOrLess + 3)
  })
  if (!hedges.includes(true)) return { list, about: false }
  // "(approx.)" leaves its brackets behind.
  const kept = list.filter((token, i) => !hedges[i] && token.text !== '(' && token.text !== ')')
  return { list: kept, about: true }
}

/**
 * The word or mark that makes a quantity a bound (`>100 ft`, `min. 50 ft`), if there is one. `unit` is a word that is a
 * unit here, whatever it means elsewhere: "min" for minutes.
 */
export const boundIn = (list: readonly Token[], unit?: string): string | undefined =>
  list.find(({ kind, text }) => {
    const word = text.toLowerCase()
    return kind !== 'number' && word !== unit && BOUND.has(word)
  })?.text

/** Cuts at `±`: the quantity and its written tolerance. */
export function atTolerance(
  list: readonly Token[],
): readonly [readonly Token[], readonly Token[] | undefined] {
  const at = list.findIndex((token) => token.kind === 'mark' && token.text === '+-')
  return at < 0 ? [list, undefined] : [list.slice(0, at), list.slice(at + 1)]
}
