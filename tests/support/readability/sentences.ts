/** A text as what readability formulas count: its sentences and its words. */
export type Counted = { readonly sentences: number; readonly words: readonly string[] }

/**
 * A sentence ends at . ! ? before a space and a capital, a digit or an opening mark, and at a line's end. The points in
 * `p.m.`, `U.S.` and `2.5` end none. Numbers with their signs (`1,250`, `±25`, `7'-6`) are one word each.
 */
export function counted(text: string): Counted {
  const ended = text
    .replaceAll(/\b([ap])\.\s?m\./gi, '$1m')
    .split(/(?<=[.!?:;])["”»)]*\s+(?=["“«¿¡(]?[\p{Lu}\d])|\n+/u)
    .filter((part) => /[\p{L}\d]/u.test(part))
  const words = text
    .replaceAll(/\b([ap])\.\s?m\./gi, '$1m')
    .split(/[\s—–/]+/u)
    .map((word) => word.replaceAll(/^[^\p{L}\d]+|[^\p{L}\d]+$/gu, ''))
    .filter((word) => word !== '')
  return { sentences: Math.max(1, ended.length), words }
}

export const isNumber = (word: string): boolean => /\d/.test(word)

export const sum = (numbers: readonly number[]): number => numbers.reduce((total, it) => total + it, 0)
