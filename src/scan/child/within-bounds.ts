import type { Word } from '../../reading/page-words.ts'

/** Twice the densest sheet of small print: more is no paper, and would keep whoever takes it in busy. */
export const MOST_WORDS = 5_000
/** Longer than any word, address or number that a form holds. */
const LONGEST_WORD = 200

/** Of a page's words as many as are taken, none longer than a word can be. */
export const withinBounds = (words: readonly Word[]): readonly Word[] =>
  words
    .slice(0, MOST_WORDS)
    .map((word) =>
      word.text.length > LONGEST_WORD ? { ...word, text: word.text.slice(0, LONGEST_WORD) } : word,
    )

export const TOO_MANY_WORDS = `This page holds more than ${MOST_WORDS} words; those after them were left out.`
