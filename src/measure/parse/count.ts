import { ok, type Result } from '../../base/result.ts'
import { boundIn } from './hedge.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import { tidy } from './tidy.ts'
import { type Token, tokens } from './tokens.ts'

/** A count as someone wrote it: bedrooms, people, tanks, pits, lines. */
export type StatedCount = { readonly count: number; readonly asWritten: string }

const NOUNS = new Set(
  (
    'br brs bd bdr bdrm bdrms bed beds bedroom bedrooms person persons people occupant occupants resident residents ' +
    'tank tanks compartment compartments pit pits trench trenches line lines lateral laterals chamber chambers ' +
    'unit units dwelling dwellings ea each'
  ).split(' '),
)
const MOST = 10_000

/** A whole number of things: `3`, `three`, `3 BR`, `3 bedrooms`, `two (2) tanks`. */
export function parseCount(text: string): Result<StatedCount, ParseIssue> {
  const plain = tidy(text)
  if (!plain.ok) return plain
  const cut = tokens(plain.value)
  if (!cut.ok) return cut
  const list = cut.value.filter((token) => !NOUNS.has(token.text.toLowerCase()))
  const bound = boundIn(list)
  if (bound !== undefined) return refuse(`${quoted(text)} is a bound ("${bound}"): write how many there are`)
  const counts = list.map(countOf)
  const [first, second] = counts
  if (first !== undefined && list.length === 1) {
    if (first > MOST) return refuse(`${quoted(text)} is more than can be counted here: check the number`)
    return ok({ count: first, asWritten: text })
  }
  const [sign] = list
  if (sign?.kind === 'mark' && sign.text === '-')
    return refuse(`${quoted(text)} is negative: a count has no sign`)
  if (list.some((token) => token.kind === 'number' && token.decimals > 0))
    return refuse(`${quoted(text)} is not a whole number: write how many there are`)
  const numbers = counts.filter((count) => count !== undefined)
  if (numbers.length > 1 || (first !== undefined && second !== undefined))
    return refuse(
      `${quoted(text)} holds more than one number: write the one that is meant`,
      numbers.map(String),
    )
  return refuse(`${quoted(text)} is not a count: write a whole number, as in 3 or three`)
}

const countOf = (token: Token): number | undefined =>
  token.kind === 'number' && token.decimals === 0 ? token.value : undefined
