import { type Found, matches } from './found.ts'

const WORDS: Record<string, number> = {
  one: 1,
  single: 1,
  two: 2,
  double: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
}
const WORD = Object.keys(WORDS).join('|')
const IN_WORDS = new RegExp(String.raw`\b(${WORD})\b(?:\s*\((\d{1,2})\))?`, 'i')
const IN_FIGURES = /(?<![\d.,/'"$#])\(?(\d{1,3})\)?(?![\dA-Za-z'"’”/%]|[.,]\d|\s?-\s?\d)/

/** Whole numbers from `least` to `most`, in figures or words, in order of place. */
export function findCounts(text: string, least: number, most: number): Found<number>[] {
  const inRange = (value: number, fit: number) =>
    value >= least && value <= most ? { value, fit, doubts: [] } : undefined
  const words = matches(text, IN_WORDS, ([, word, figures]) => {
    const value = WORDS[word!.toLowerCase()]!
    return figures !== undefined && Number(figures) !== value ? undefined : inRange(value, 0.98)
  })
  const figures = matches(text, IN_FIGURES, ([, digits]) => inRange(Number(digits), 1)).filter(
    (found) => !words.some(({ start, end }) => found.start < end && found.end > start),
  )
  return [...words, ...figures].sort((a, b) => a.start - b.start)
}

const NUMBER = /(?<![\d.,/'"$#-])(\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?)(?![\dA-Za-z'"’”/]|[.,]\d|-\d)/

/** Plain numbers from `least` to `most`: a flow in gallons a day, a rate in minutes an inch. */
export const findNumbers = (text: string, least: number, most: number): Found<number>[] =>
  matches(text, NUMBER, ([, written]) => {
    const value = Number(written!.replace(/,/g, ''))
    return value >= least && value <= most ? { value, fit: 1, doubts: [] } : undefined
  })
