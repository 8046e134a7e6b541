import type { Result } from '../../base/result.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import type { Token } from './tokens.ts'

const ABOUT = new Set(['about', 'approx', 'approximately', 'appr', 'abt', 'ca', 'circa', '~', '≈'])
const BOUND = new Set('> < ≥ ≤ over under above below min max minimum maximum least most up'.split(' '))

/**
 * Takes out "about", "approx.", "more or less", `~`, and a `±` that no number follows, and says whether there was one.
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
    if (token.text === '+-') return !numberAfter(i)
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

/** `±1000 gal`: about so much to one writer, and to another how far off a value that is not there may be. */
export const toleranceAlone = (
  list: readonly Token[],
  text: string,
): Result<never, ParseIssue> | undefined =>
  list[0]?.kind === 'mark' && list[0].text === '+-'
    ? refuse(`${quoted(text)} is a tolerance without its value: write the value first, or "about"`, [
        text.trim().replace(/^(?:±|\+ ?\/? ?-)\s*/, 'about '),
      ])
    : undefined

/** A tolerance as large as its value says nothing. */
export const toleranceTooLarge = (text: string): Result<never, ParseIssue> =>
  refuse(`${quoted(text)} has a tolerance as large as the value: check both`)
