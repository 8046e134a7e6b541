/**
 * The characters that the letters' fonts have in every weight used, as inclusive ranges of code points; a test prints
 * every one of them. What people type is not always among them, and a character without a glyph makes a PDF that
 * no reader can speak (PDF/UA-1, ISO 14289-1:2014, 7.21.4.1 and 7.21.7).
 */
export const PRINTABLE: readonly (readonly [from: number, to: number])[] = [
  [0x20, 0x7e],
  [0xa1, 0xac],
  [0xae, 0x17f],
  [0x218, 0x21b],
  [0x37e, 0x37e],
  [0x384, 0x38a],
  [0x38c, 0x38c],
  [0x38e, 0x3a1],
  [0x3a3, 0x3ce],
  [0x401, 0x45f],
  [0x1ea0, 0x1ef9],
  [0x2010, 0x2015],
  [0x2018, 0x201e],
  [0x2020, 0x2022],
  [0x2026, 0x2026],
  [0x2030, 0x2030],
  [0x2032, 0x2033],
  [0x2039, 0x203a],
  [0x2044, 0x2044],
  [0x2070, 0x2071],
  [0x2074, 0x208e],
  [0x20ac, 0x20ac],
  [0x2116, 0x2116],
  [0x2122, 0x2122],
  [0x2153, 0x215e],
  [0x2190, 0x2193],
  [0x2202, 0x2202],
  [0x2206, 0x2206],
  [0x220f, 0x220f],
  [0x2211, 0x2212],
  [0x221a, 0x221c],
  [0x221e, 0x221e],
  [0x2248, 0x2248],
  [0x2260, 0x2260],
  [0x2264, 0x2265],
  [0xfffd, 0xfffd],
]

const has = (point: number): boolean => PRINTABLE.some(([from, to]) => from <= point && point <= to)

/** What stands for a character that the fonts don't have. */
export const REPLACEMENT = '\u{fffd}'

/** Signs of our own working that the fonts lack, as they are written on a line. */
const WRITTEN_OUT: Readonly<Record<string, string>> = { ᵀ: '^T', '⅐': '1/7' }

/**
 * Text as the letters' fonts can print it: composed (NFC), white space and line ends as single spaces, what is not
 * seen (control and formatting characters) left out, and any other character without a glyph shown as such.
 */
export const printable = (text: string): string =>
  [...text.normalize('NFC').replace(/[\s\u{a0}]+/gu, ' ')]
    .map((character) => {
      const written = WRITTEN_OUT[character]
      if (written !== undefined) return written
      if (has(character.codePointAt(0) ?? 0)) return character
      return /[\p{Cc}\p{Cf}\p{Cs}]/u.test(character) ? '' : REPLACEMENT
    })
    .join('')
    .replace(/ {2,}/g, ' ')
    .trim()

/** The same through a whole structure; markup that we made ourselves (`svg`) is left as it is. */
export function printableThroughout<T>(value: T): T {
  if (typeof value === 'string') return printable(value) as T
  if (Array.isArray(value)) return value.map(printableThroughout) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, key === 'svg' ? inner : printableThroughout(inner)]),
  ) as T
}
