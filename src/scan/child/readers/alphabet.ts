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
