import type { Word } from '../../reading/page-words.ts'

const STRANGE = /[^\u0020-\u024f\u2010-\u2044\u2070-\u209f\u20ac\u2150-\u218f\u2190-\u22ff\u2500-\u27bf]/u
/** Above this share of characters that no permit is written in, the font's table of characters is broken. */
const MOST_STRANGE = 0.15
/** English runs at about 38 letters in a hundred vowels; codes and abbreviations lower it. From trial on text PDFs. */
const LEAST_VOWELS = 0.12

/** Does a page's own text spell anything? Fonts without a table of characters give letters that are not on the page. */
export function isGarbled(words: readonly Word[]): boolean {
  const text = words.map((word) => word.text).join('')
  if (text.length < 20) return false
  const strange = [...text].filter((character) => STRANGE.test(character)).length
  if (strange / text.length > MOST_STRANGE) return true
  const letters = text.replace(/[^a-z]/gi, '')
  if (letters.length < 40) return false
  const vowels = letters.replace(/[^aeiouy]/gi, '').length
  return vowels / letters.length < LEAST_VOWELS
}
