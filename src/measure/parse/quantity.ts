import { ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../print/number.ts'
import { type Amount, amountAt } from './amount.ts'
import { type Counted, countBeforeSize } from './count-before.ts'
import { atTolerance, boundIn, toleranceAlone, toleranceTooLarge, withoutAbout } from './hedge.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import { tidy } from './tidy.ts'
import { type Token, tokens } from './tokens.ts'

/** The units of one kind of quantity, as data. Spellings are lower case, words run together, `/` written `per`. */
export type UnitTable = {
  readonly what: string
  readonly base: string
  /** What there may be several of, each of such a size. */
  readonly of: Counted
  readonly like: string
  /** The units that are taken, as a person writes them. */
  readonly accepted: string
  readonly most: number
  /** Words after the unit that say what it is of: `1,000 gal septic tank`. */
  readonly beside?: readonly string[]
  readonly units: readonly (readonly [perBase: number, spellings: string])[]
  /** Units that are refused, why, and what could have been meant; `#` stands for the number. */
  readonly refused: readonly (readonly [spellings: string, why: string, readings: readonly string[]])[]
}

export type Quantity = { readonly value: number; readonly halfStep: number; readonly approximate?: true }

/** One number with one unit of the table, with a written tolerance or an "about" where there is one. */
export function parseQuantity(text: string, table: UnitTable, bare: boolean): Result<Quantity, ParseIssue> {
  const plain = tidy(text)
  if (!plain.ok) return plain
  const cut = tokens(plain.value, true)
  if (!cut.ok) return cut
  const { list, about } = withoutAbout(cut.value)
  const bound = boundIn(list)
  if (bound !== undefined)
    return refuse(
      `${quoted(text)} is a bound ("${bound}") and not a ${table.what}: write the ${table.what} itself`,
    )
  const alone = toleranceAlone(list, text)
  if (alone) return alone
  const [written, tolerance] = atTolerance(list)
  const main = split(written, text, table)
  if (!main.ok) return main
  const margin = tolerance && split(tolerance, text, table)
  if (margin && !margin.ok) return margin
  // "1,000 ± 50 gal" and "1,000 gal ± 50" name their one unit once.
  const unit = main.value.unit || margin?.value.unit || ''
  const per = factor(unit, main.value.amount, text, table, bare)
  if (!per.ok) return per
  const perMargin = margin && factor(margin.value.unit || unit, margin.value.amount, text, table, bare)
  if (perMargin && !perMargin.ok) return perMargin
  const value = main.value.amount.value * per.value
  if (value > table.most)
    return refuse(
      `${quoted(text)} is more than any ${table.what} on one parcel: check the number and the unit`,
    )
  const halfStep =
    margin && perMargin?.ok
      ? margin.value.amount.value * perMargin.value
      : main.value.amount.halfStep * per.value
  if (margin && halfStep >= value) return toleranceTooLarge(text)
  return ok({ value, halfStep, ...(about ? { approximate: true } : {}) })
}

type Parts = { readonly amount: Amount; readonly unit: string }

function split(list: readonly Token[], text: string, table: UnitTable): Result<Parts, ParseIssue> {
  const [first, second, third] = list
  if (first?.kind === 'mark' && first.text === '-')
    return refuse(`${quoted(text)} is negative: a ${table.what} is written without a sign`)
  const several = countBeforeSize(list, text, table.of, table.base)
  if (several) return several
  if (first?.kind === 'number' && third?.kind === 'number' && second?.kind !== 'number') {
    const times = second?.text.toLowerCase() === 'x'
    const isFraction = second?.text === '/' && first.value < third.value
    const meant = times ? [printSignificant(first.value * third.value, 12)] : [first.text, third.text]
    if (!isFraction)
      return refuse(
        `${quoted(text)} holds more than one number: write one ${table.what} at a time`,
        meant.map((number) => `${number} ${table.base}`),
      )
  }
  const amount = amountAt(list, 0)
  if (!amount) return refuse(`${quoted(text)} does not begin with a number: write it like ${table.like}`)
  if (!amount.ok) return amount
  const rest = list.slice(amount.value.next)
  if (rest.some((token) => token.kind === 'number'))
    return refuse(`${quoted(text)} holds more than one number: write one ${table.what} at a time`)
  const words = rest.map((token) => (token.text === '/' ? 'per' : token.text.toLowerCase()))
  while (words.length > 1 && table.beside?.includes(words.at(-1)!)) words.pop()
  // "1,000-gal": a hyphen that joins the number and its unit.
  const unit = (words[0] === '-' ? words.slice(1) : words).join('')
  return ok({ amount: amount.value, unit })
}

const lists = (spellings: string, unit: string): boolean => spellings.split(' ').includes(unit)

function factor(
  unit: string,
  amount: Amount,
  text: string,
  table: UnitTable,
  bare: boolean,
): Result<number, ParseIssue> {
  if (unit === '') {
    if (bare) return ok(1)
    return refuse(`${quoted(text)} has no unit: write it like ${table.like}`, [
      `${amount.text} ${table.base}`,
    ])
  }
  const refused = table.refused.find(([spellings]) => lists(spellings, unit))
  if (refused)
    return refuse(
      `${quoted(text)} ${refused[1]}; write it like ${table.like}`,
      refused[2].map((reading) => reading.replace('#', amount.text)),
    )
  const known = table.units.find(([, spellings]) => lists(spellings, unit))
  if (known) return ok(known[0])
  return refuse(
    `${quoted(text)}: "${unit}" is not a unit of ${table.what}: write ${table.accepted}, like ${table.like}`,
  )
}
