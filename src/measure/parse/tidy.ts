import { ok, type Result } from '../../base/result.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import { numberWordsInFigures } from './number-words.ts'

/** Longer than any one quantity is written; what is longer is not searched. */
export const LONGEST_TEXT = 80

const VULGAR = new Map<string, string>([
  ['¼', '1/4'],
  ['½', '1/2'],
  ['¾', '3/4'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['⅕', '1/5'],
  ['⅖', '2/5'],
  ['⅗', '3/5'],
  ['⅘', '4/5'],
  ['⅙', '1/6'],
  ['⅚', '5/6'],
  ['⅐', '1/7'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
  ['⅑', '1/9'],
  ['⅒', '1/10'],
])
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉'

const digitsOf = (text: string, alphabet: string): string =>
  [...text].map((character) => alphabet.indexOf(character)).join('')

/**
 * One spelling for the many: straight marks for typographic quotes and primes, `-` for every dash, `1/2` for `½` and
 * for raised and lowered digits, figures for number words, single spaces. Refuses what is empty, too long, or holds characters that don't show.
 */
export function tidy(text: string): Result<string, ParseIssue> {
  if (text.length > LONGEST_TEXT)
    return refuse(
      `${quoted(text)} is ${text.length} characters long: write one quantity, at most ${LONGEST_TEXT}`,
    )
  const plain = text
    .replace(/[\s\u00a0\u2000-\u200a\u202f\u205f\u3000]+/g, ' ')
    .replace(/[‘’‛′ʹʼ´`＇]/g, "'")
    .replace(/[“”„‟″ʺ〃＂]/g, '"')
    .replace(/''/g, '"')
    .replace(/[‐‑‒–—―−﹣－]/g, '-')
    .replace(/[×✕⨯]/g, 'x')
    .replace(/([⁰¹²³⁴-⁹]+)[⁄/]([₀-₉]+)/g, (_, top: string, bottom: string) => {
      return ` ${digitsOf(top, SUPERSCRIPTS)}/${digitsOf(bottom, SUBSCRIPTS)}`
    })
    .replace(/[¼-¾⅐-⅞]/g, (character) => ` ${VULGAR.get(character) ?? character}`)
    .replace(/⁄/g, '/')
    .replace(/ +/g, ' ')
    .trim()
  if (plain === '') return refuse('nothing is written here')
  const hidden = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}]/u.exec(plain)
  if (hidden) {
    const code = hidden[0].codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')
    return refuse(
      `there is a character that does not show (U+${code}): delete it and write the quantity again`,
    )
  }
  if (/[^\P{Nd}0-9]/u.test(plain)) {
    const narrow = plain.normalize('NFKC')
    return refuse(
      `${quoted(plain)} has figures other than 0 to 9: write it with those`,
      /[^\P{Nd}0-9]/u.test(narrow) ? [] : [narrow],
    )
  }
  if (/\d[eE][+-]?\d/.test(plain))
    return refuse(`${quoted(plain)} is in scientific notation: write the number out`)
  const mistaken = letterForDigit(plain)
  if (mistaken !== undefined)
    return refuse(`${quoted(plain)} has a letter where a digit belongs: write the digit`, [mistaken])
  return ok(numberWordsInFigures(plain))
}

/** `1O00` with the letter O, `l50` with the letter l: what it would be with digits; undefined when there is none. */
function letterForDigit(text: string): string | undefined {
  const tidied = text
    .replace(/(?<=[\d.,])[Oo]+(?![A-Za-z])/g, (letters) => '0'.repeat(letters.length))
    .replace(/(?<![A-Za-z])[Oo](?=[\d.,]*\d)/g, '0')
    .replace(/(?<![A-Za-z])[lI](?=[\d.,]*\d)/g, '1')
  return tidied === text ? undefined : tidied
}
