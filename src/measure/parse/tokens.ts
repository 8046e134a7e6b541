import { ok, type Result } from '../../base/result.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'

/** A number as written, with the half of its last place: `54` is 54 ± 0.5, `4.50` is 4.5 ± 0.005. */
export type NumberToken = {
  readonly kind: 'number'
  readonly text: string
  readonly value: number
  readonly halfStep: number
  readonly decimals: number
}
/** Letters, dots taken out: `ft.` and `L.F.` are `ft` and `LF`. Case is kept, for `M` and `m` differ. */
export type WordToken = { readonly kind: 'word'; readonly text: string }
/** Any other single character, or `+-` (also from `+/-` and `±`). */
export type MarkToken = { readonly kind: 'mark'; readonly text: string }
export type Token = NumberToken | WordToken | MarkToken

const PLAIN = /^\d+$/
const GROUPED = /^\d{1,3}(?:,\d{3})+$/
const MOST_DIGITS = 15

/**
 * Cuts tidied text into numbers, words and marks, in one pass. `powers` says that a 2 or 3 straight after letters is
 * a power (`ft2`, `m3`), which it is in an area or a volume and never in a length (`6ft3in`). A space parts numbers and
 * never groups thousands: see `count-before.ts`.
 */
export function tokens(text: string, powers = false): Result<readonly Token[], ParseIssue> {
  const found: Token[] = []
  let at = 0
  while (at < text.length) {
    const rest = text.slice(at)
    if (rest.startsWith(' ')) {
      at += 1
      continue
    }
    const sign = /^(?:\+ ?\/ ?-|\+-|±)/.exec(rest)
    if (sign) {
      found.push({ kind: 'mark', text: '+-' })
      at += sign[0].length
      continue
    }
    const digits = /^[\d.,]*\d\.?/.exec(rest)
    if (digits) {
      const number = numberToken(digits[0])
      if (!number.ok) return number
      found.push(number.value)
      at += digits[0].length
      continue
    }
    const word = powers
      ? /^[A-Za-z][A-Za-z.]*(?:\^?[23](?![\dA-Za-z])|[²³])?/.exec(rest)
      : /^[A-Za-z][A-Za-z.]*/.exec(rest)
    if (word) {
      const spelling = word[0].replace(/[.^]/g, '').replace('²', '2').replace('³', '3')
      found.push({ kind: 'word', text: spelling })
      at += word[0].length
      continue
    }
    const character = String.fromCodePoint(rest.codePointAt(0)!)
    found.push({ kind: 'mark', text: character })
    at += character.length
  }
  return ok(found)
}

function numberToken(written: string): Result<NumberToken, ParseIssue> {
  const text = written.replace(/\.$/, '')
  const [whole = '', fraction, ...more] = text.split('.')
  const good = more.length === 0 && (whole === '' || PLAIN.test(whole) || GROUPED.test(whole))
  if (!good || (fraction !== undefined && !PLAIN.test(fraction)))
    return refuse(
      `${quoted(text)} is not a number as written here: a point before decimals, commas only between thousands`,
      /^\d+,\d{1,2}$/.test(text) ? [text.replace(',', '.')] : [],
    )
  if (whole.length + (fraction?.length ?? 0) > MOST_DIGITS)
    return refuse(`${quoted(text)} has more digits than any quantity here: write it rounded`)
  const decimals = fraction?.length ?? 0
  const value = Number(`${whole.replace(/,/g, '') || '0'}.${fraction ?? '0'}`)
  return ok({ kind: 'number', text, value, decimals, halfStep: 0.5 / 10 ** decimals })
}
