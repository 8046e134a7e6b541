import type { Word } from '../../../reading/page-words.ts'
import type { Box } from '../../../records/source.ts'
import { EMPTY_BOX, STRUCK, TICKED_BOX } from './alphabet.ts'

/**
 * What the reader of our own saw and what the general one saw, as first and second opinion. Where our own saw only that
 * something is struck out, the general one says what, and is then no second opinion on it: nobody agrees with himself.
 */
export function sideBySide(
  own: readonly Word[],
  general: readonly Word[],
): { readonly words: Word[]; readonly secondWords: Word[] } {
  const blots = own.filter(({ text }) => isBlot(text))
  const lent = general.filter(({ box }) => blots.some((blot) => covers(blot.box, box)))
  return {
    words: [...own.filter(({ text }) => !isBlot(text)).map(written), ...lent],
    secondWords: general.filter((word) => !lent.includes(word)),
  }
}

const isBlot = (text: string): boolean =>
  [...text].filter((sign) => sign === STRUCK).length * 2 >= text.length

/** A drawn box that stands alone, as forms print it in signs. */
const written = (word: Word): Word =>
  word.text === EMPTY_BOX
    ? { ...word, text: '[ ]' }
    : word.text === TICKED_BOX
      ? { ...word, text: '[X]' }
      : word

/** Does the one box hide nearly half of the other or more? */
export const covers = (over: Box, box: Box): boolean => {
  const w = Math.min(over.x + over.w, box.x + box.w) - Math.max(over.x, box.x)
  const h = Math.min(over.y + over.h, box.y + box.h) - Math.max(over.y, box.y)
  return w > 0 && h > 0 && (w * h) / (box.w * box.h) > 0.45
}
