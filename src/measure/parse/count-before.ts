import type { Result } from '../../base/result.ts'
import { printSignificant } from '../print/number.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import type { NumberToken, Token } from './tokens.ts'

/** One of what is counted and more than one of it: `tank`, `tanks`. */
export type Counted = readonly [one: string, many: string]

/** More alike than this are on no parcel; two numbers with a larger first are no count and its size (common practice). */
const MOST = 99
const BETWEEN = new Set(['x', '@', '-', 'of', 'at', '('])
/** Words after a size that say that there are several. */
const SEVERAL = /^(?:tanks|pits|trenches|lines|laterals|each|ea)$/i

/**
 * A count before a size, `two 500 gal`, `2 - 500 gal`, `2 x 500 gal`: so many things of that size, which is not one
 * quantity. A space groups no thousands here, for `2 500 gal` is two tanks on one card and 2,500 gal on another: it is
 * asked. Undefined where the text does not begin with two numbers.
 */
export function countBeforeSize(
  list: readonly Token[],
  text: string,
  [one, many]: Counted,
  base: string,
): Result<never, ParseIssue> | undefined {
  const first = numberIn(list[0])
  if (!first || first.decimals > 0 || first.value > MOST) return undefined
  const between = list[1]?.kind === 'number' ? undefined : list[1]?.text.toLowerCase()
  const at = between === undefined ? 1 : 2
  const size = numberIn(list[at])
  if (!size || (between !== undefined && !BETWEEN.has(between))) return undefined
  const rest = list.slice(at + 1).filter(({ text: it }) => it !== '-' && it !== ')' && !SEVERAL.test(it))
  if (rest[0]?.text === '/' || rest.some(({ kind }) => kind === 'number')) return undefined
  const unit = rest.map(({ text: it }) => it).join(' ') || base
  const grouped =
    between === undefined && /^\d{3}$/.test(size.text) ? [`${first.value},${size.text} ${unit}`] : []
  const product = between === 'x' ? [`${printSignificant(first.value * size.value, 12)} ${unit}`] : []
  // `2-500 gal` is a count, `900-1,000 gal` and `40-60 ft` are ranges: so wide a range nobody writes (common practice).
  if (between === '-' && size.value < 20 * first.value) return undefined
  const each = size.value === 0 ? [] : [`${size.text} ${unit}`]
  const things = `${first.value} ${first.value === 1 ? one : many} of ${size.text} ${unit}`
  const asked = [...(each.length > 0 ? [things] : []), ...grouped, ...product.map((it) => `${it} in all`)]
  return refuse(
    `${quoted(text)}: ${asked.join(', or ')}? Write the size of one, or one number with a comma between thousands`,
    [...each, ...grouped, ...product],
  )
}

const numberIn = (token: Token | undefined): NumberToken | undefined =>
  token?.kind === 'number' ? token : undefined
