import { ok, type Result } from '../../base/result.ts'
import { type Amount, amountAt } from './amount.ts'
import { countBeforeSize } from './count-before.ts'
import { atTolerance, boundIn, toleranceAlone, toleranceTooLarge, withoutAbout } from './hedge.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import { FT_PER, type LengthUnit, lengthUnit } from './length-unit.ts'
import { tidy } from './tidy.ts'
import { type Token, tokens } from './tokens.ts'

/**
 * A length as someone wrote it, in ft. `halfStepFt` is half of the last place stated: 1/2 in for `4'-6"`, 1/16 in for
 * `4'-6 1/8"`, 0.05 ft for `106.2 ft`; or the tolerance itself where one is written (`4 ft ± 2 in`).
 */
export type StatedLength = {
  readonly ft: number
  readonly halfStepFt: number
  readonly asWritten: string
  /** Written with "about", "approx.", `~` or a `±` that nothing follows. */
  readonly approximate?: true
}

/** What a number with no unit means where it stands. */
export type BareLength = { readonly bare: 'ft' | 'in' | 'refuse' }

/** Longer than any length on one parcel: what is longer was mistyped or misread. */
const LONGEST_FT = 100_000

type Part = Amount & { readonly unit: LengthUnit | undefined }

/**
 * A length in any of the ways people write one: `4'-6"`, `4 ft 6 1/2 in`, `54"`, `4.5'`, `106.2 ft` (tenths of a
 * foot), `1.37 m`, `4'6`. A number with no unit is refused with the readings it could have, unless `bare` says what
 * it means here; `4-6` is refused always, for it may be feet and inches or a range.
 */
export function parseLength(
  text: string,
  { bare }: BareLength = { bare: 'refuse' },
): Result<StatedLength, ParseIssue> {
  const plain = tidy(text)
  if (!plain.ok) return plain
  const cut = tokens(plain.value)
  if (!cut.ok) return cut
  const { list, about } = withoutAbout(cut.value)
  const bound = boundIn(list)
  if (bound !== undefined)
    return refuse(`${quoted(text)} is a bound ("${bound}") and not a length: write the length itself`)
  const alone = toleranceAlone(list, text)
  if (alone) return alone
  const [written, tolerance] = atTolerance(list)
  const several = apart(written)
    ? countBeforeSize(written, text, ['length', 'lengths'], bare === 'refuse' ? 'ft' : bare)
    : undefined
  if (several) return several
  const parts = partsOf(written, text)
  if (!parts.ok) return parts
  const margin = tolerance && partsOf(tolerance, text)
  if (margin && !margin.ok) return margin
  const unitOfBoth = parts.value.length === 1 ? margin?.value[0]?.unit : undefined
  const length = lengthOf(parts.value, unitOfBoth ?? bare, text)
  if (!length.ok) return length
  const half = margin && lengthOf(margin.value, 'refuse', text)
  if (half && !half.ok) return half
  if (length.value.ft > LONGEST_FT)
    return refuse(`${quoted(text)} is longer than ${LONGEST_FT} ft: check the number and the unit`)
  const halfStepFt = half ? half.value.ft : length.value.halfStepFt
  if (half && halfStepFt >= length.value.ft) return toleranceTooLarge(text)
  return ok({ ft: length.value.ft, halfStepFt, asWritten: text, ...(about ? { approximate: true } : {}) })
}

const isMark = (token: Token | undefined, text: string): boolean =>
  token?.kind === 'mark' && token.text === text

/** Amounts with their units, in order; what stands between two of them is checked here too. */
function partsOf(list: readonly Token[], text: string): Result<readonly Part[], ParseIssue> {
  const parts: Part[] = []
  let at = 0
  while (at < list.length) {
    const token = list[at]!
    if (isMark(token, '-') && parts.length === 0)
      return refuse(`${quoted(text)} is negative: a length is written without a sign`)
    const joined = isMark(token, '-') || isMark(token, ',') || isMark(token, '&') || token.text === 'and'
    if (joined && parts.length > 0) {
      const previous = parts.at(-1)!
      if (previous.unit === undefined || (isMark(token, '-') && !isFeet(previous)))
        return rangeOf(list, at, previous, text)
      at += 1
    }
    const amount = amountAt(list, at)
    if (!amount) return unexpected(list[at] ?? token, text)
    if (!amount.ok) return amount
    const named = unitAt(list, amount.value.next)
    parts.push({ ...amount.value, unit: named?.unit })
    at = named?.next ?? amount.value.next
  }
  return ok(parts)
}

/** Two numbers with only a space between: `2 100 ft`. All else between two numbers of a length has readings of its own. */
const apart = ([first, second]: readonly Token[]): boolean =>
  first?.kind === 'number' && second?.kind === 'number'

const isFeet = (part: Part): boolean => part.unit === 'ft' || part.unit === 'm' || part.unit === 'yd'

function unitAt(
  list: readonly Token[],
  at: number,
): { readonly unit: LengthUnit; readonly next: number } | undefined {
  // "a 10-ft trench" joins the number and its unit; "120 lin. ft." says that the feet are not square.
  const hyphen = isMark(list[at], '-') && list[at + 1]?.kind === 'word' ? at + 1 : at
  const word = list[hyphen]
  const lineal = word?.kind === 'word' && /^(?:lineal|linear|lin)$/i.test(word.text) ? hyphen + 1 : hyphen
  const unit = lengthUnit(list[lineal])
  return unit && { unit, next: lineal + 1 }
}

function unexpected(token: Token, text: string): Result<never, ParseIssue> {
  if (token.text === 'x' || token.text === 'by')
    return refuse(`${quoted(text)} holds more than one length: write one at a time`)
  if (token.kind === 'word')
    return refuse(
      `${quoted(text)}: "${token.text}" is not a unit of length: write ft, in or m after a number`,
    )
  return refuse(
    `${quoted(text)} is not a length: write it like 4'-6", 4 ft 6 1/2 in, 54 in, 4.5 ft or 1.37 m`,
  )
}

/** `4-6`, `4-6 ft`: feet and inches to one reader, a range to another. */
function rangeOf(list: readonly Token[], at: number, first: Part, text: string): Result<never, ParseIssue> {
  const second = amountAt(list, at + 1)
  if (!second?.ok) return unexpected(list[at + 1] ?? list[at]!, text)
  const unit = first.unit ?? unitAt(list, second.value.next)?.unit
  const dashed = isMark(list[at], '-') && first.unit === undefined && second.value.value < 12
  const asFeet =
    dashed && (unit === undefined || unit === 'in') ? [`${first.text}'-${second.value.text}"`] : []
  const ends = (unit ? [unit] : ['ft', 'in']).flatMap((u) => [
    `${first.text} ${u}`,
    `${second.value.text} ${u}`,
  ])
  return refuse(
    `${quoted(text)} may be one length or the two ends of a range: write the one that is meant, with its units`,
    [...asFeet, ...ends],
  )
}

function lengthOf(
  parts: readonly Part[],
  bare: LengthUnit | 'refuse',
  text: string,
): Result<Pick<StatedLength, 'ft' | 'halfStepFt'>, ParseIssue> {
  const [first, second, ...more] = parts
  if (!first) return refuse(`${quoted(text)} holds no number: write it like 4'-6" or 4.5 ft`)
  if (!second) return oneLength(first, bare, text)
  const inner: LengthUnit | undefined = first.unit === 'ft' ? 'in' : first.unit === 'm' ? 'cm' : undefined
  const most = inner === 'in' ? 12 : 100
  if (more.length > 0 || inner === undefined || (second.unit ?? 'in') !== inner)
    return refuse(
      `${quoted(text)} is not one length: write feet then inches, as in 4'-6", or one number and its unit`,
    )
  if (!/^\d[\d,]*$/.test(first.text))
    return refuse(`${quoted(text)} has a part of a foot and inches besides: write one or the other`)
  const ft = first.value * FT_PER[first.unit!] + second.value * FT_PER[inner]
  if (second.value >= most)
    return refuse(
      `${quoted(text)} has ${second.text} ${inner} after the ${first.unit}, where less than ${most} belongs`,
      inner === 'in'
        ? [`${second.text} in`, `${+(ft * 12).toFixed(4)} in`]
        : [`${+(ft * 30.48).toFixed(4)} cm`],
    )
  return ok({ ft, halfStepFt: second.halfStep * FT_PER[inner] })
}

function oneLength(
  part: Part,
  bare: LengthUnit | 'refuse',
  text: string,
): Result<{ ft: number; halfStepFt: number }, ParseIssue> {
  const unit = part.unit ?? bare
  if (unit === 'refuse') {
    const feetAndInches = /^(\d+)\.(\d|1[01])$/.exec(part.text)
    return refuse(`${quoted(text)} has no unit: write it with ft, in or m`, [
      `${part.text} ft`,
      `${part.text} in`,
      ...(feetAndInches ? [`${feetAndInches[1]}'-${feetAndInches[2]}"`] : []),
    ])
  }
  return ok({ ft: part.value * FT_PER[unit], halfStepFt: part.halfStep * FT_PER[unit] })
}
