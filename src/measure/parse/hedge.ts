import type { Token } from './tokens.ts'

const ABOUT = new Set(['about', 'approx', 'approximately', 'appr', 'abt', 'ca', 'circa', '~', '≈'])
const BOUND = new Set('> < ≥ ≤ over under above below min max minimum maximum least most up'.split(' '))

/** Takes out "about", "approx.", `~` and a `±` with nothing after it, and says whether there was one. */
export function withoutAbout(list: readonly Token[]): {
  readonly list: readonly Token[]
  readonly about: boolean
} {
  const last = list.at(-1)
  const bare = last?.kind === 'mark' && last.text === '+-' ? list.slice(0, -1) : list
  const kept = bare.filter((token) => token.kind === 'number' || !ABOUT.has(token.text.toLowerCase()))
  return { list: kept, about: kept.length < list.length }
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
