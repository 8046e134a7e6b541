import type { LetterKind } from '../content/frame.ts'

/**
 * What is to be printed: the contents, from ample to tight, of which the first that fits on `most` pages is taken, and
 * failing all the last. Null where any number of pages will do.
 */
export type Sheet = {
  readonly kind: LetterKind
  readonly contents: readonly [unknown, ...unknown[]]
  readonly mostPages: number | null
  /** Photos that the contents name, JPEG, by their hash. */
  readonly pictures?: Pictures
}

export type Pictures = ReadonlyMap<string, Uint8Array>

export type Printed = {
  readonly pdf: Buffer
  readonly pages: number
  /** Which of the contents was taken. */
  readonly content: number
}
