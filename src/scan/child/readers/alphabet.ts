import { readFileSync } from 'node:fs'
import { dictionaryPath } from './models.ts'

/** What an American permit is written in; the network also knows thousands of signs that no permit holds. */
const WANTED = new Set([
  ...`ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 .,:;'"-/()#&%$+=@*_!?[]<>~^|`,
  ...'°½¼¾×±“”‘’′″–—☑☒□■√',
])

export type Alphabet = {
  readonly blank: 0
  readonly classes: readonly { readonly index: number; readonly sign: string }[]
}

/** Classes of the general reader that are wanted: 0 is "nothing here", then the dictionary's lines, then the space. */
export function loadAlphabet(): Alphabet {
  const lines = readFileSync(dictionaryPath, 'utf8').replace(/\n$/, '').split('\n')
  const classes = [...lines, ' '].flatMap((sign, at) => (WANTED.has(sign) ? [{ index: at + 1, sign }] : []))
  return { blank: 0, classes }
}

/** A drawn box to tick, empty and ticked, and a sign that is struck out: what the reader of our own says for them. */
export const EMPTY_BOX = '□'
export const TICKED_BOX = '☒'
export const STRUCK = '▓'

/** The classes of the reader of our own, as its training numbers them (`SIGNS` of `scan/training/recognizer/texts.py`). */
const OWN_SIGNS = [
  ' 0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz',
  `!"#$%&'()*+,-./:;<=>?@[\\]^_\`{|}~½¼¾°±`,
  `${EMPTY_BOX}${TICKED_BOX}${STRUCK}`,
].join('')

export const OWN_ALPHABET: Alphabet = {
  blank: 0,
  classes: [...OWN_SIGNS].map((sign, at) => ({ index: at + 1, sign })),
}
