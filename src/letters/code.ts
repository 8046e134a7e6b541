import { randomInt } from 'node:crypto'
import { err, ok, type Result } from '../base/result.ts'
import type { CodeFault } from '../words/letter-code.ts'

/** No two of these look alike in any hand or type: without 0 O, 1 I L, 2 Z, 5 S, 8 B and U V. */
const SIGNS = '34679ACDEFGHJKMNPQRTWXY'
const LENGTH = 16

/**
 * A new code, four groups of four: 15 signs by chance out of 23 (68 bits: nobody finds one by trying) and a last one
 * that depends on the others, so that a slip of the fingers is told from a letter that never was.
 */
export function newCode(): string {
  const drawn = Array.from({ length: LENGTH - 1 }, () => SIGNS[randomInt(SIGNS.length)]).join('')
  return grouped(drawn + lastSign(drawn))
}

/** A code as people type it (any case, any spacing) to the way it is kept; what is wrong with it otherwise. */
export function readCode(typed: string): Result<string, CodeFault> {
  const signs = typed.toUpperCase().replace(/[\s\-–—_.]/g, '')
  const foreign = [...signs].find((sign) => !SIGNS.includes(sign))
  if (foreign !== undefined) return err({ why: 'foreign-sign', sign: foreign })
  if (signs.length !== LENGTH) return err({ why: 'length', given: signs.length, wanted: LENGTH })
  const drawn = signs.slice(0, -1)
  return lastSign(drawn) === signs.at(-1) ? ok(grouped(signs)) : err({ why: 'mistyped' })
}

const grouped = (signs: string): string => signs.match(/.{4}/g)!.join('-')

/**
 * The place-weighted sum modulo 23. As 23 is a prime above the greatest weight, every single wrong sign and every
 * two signs that changed places change it.
 */
function lastSign(drawn: string): string {
  const sum = [...drawn].reduce((total, sign, at) => total + (at + 1) * SIGNS.indexOf(sign), 0)
  return SIGNS[sum % SIGNS.length]!
}
