import { counted, isNumber, sum } from './sentences.ts'

/**
 * The U.S. school grade at which a text is understood: 0.39 · words/sentences + 11.8 · syllables/words − 15.59.
 * J. P. Kincaid and others, Derivation of New Readability Formulas for Navy Enlisted Personnel, Research Branch Report
 * 8-75, 1975 (from memory). A grade below zero is as easy as it gets.
 */
export function englishGrade(text: string): number {
  const { sentences, words } = counted(text)
  if (words.length === 0) return 0
  return 0.39 * (words.length / sentences) + 11.8 * (sum(words.map(englishSyllables)) / words.length) - 15.59
}

/** Words that the rule below miscounts, and that people meet here. */
const KNOWN: Readonly<Record<string, number>> = {
  every: 2,
  area: 3,
  being: 2,
  business: 2,
  reptilian: 3,
  creature: 2,
  society: 4,
  people: 2,
  something: 2,
  sometimes: 2,
  someone: 2,
  somewhere: 2,
  therefore: 2,
  baffle: 2,
  outdated: 3,
  genuine: 3,
  create: 2,
  created: 3,
  reliable: 4,
}

/**
 * Groups of vowels, less the silent e at the end and in -es and -ed, and more where two vowels are two (`ia`, `io` but
 * for -tion and -cious, `eo`, `uou`). A number counts as two, which is what `ten` to `twenty` come to on average.
 */
export function englishSyllables(word: string): number {
  if (isNumber(word)) return 2
  return Math.max(
    1,
    sum(
      word
        .toLowerCase()
        .replaceAll(/[’']s?$/g, '')
        .split(/[-'’]/)
        .map(ofPart),
    ),
  )
}

function ofPart(part: string): number {
  const word = part.replaceAll(/[^a-z]/g, '')
  if (word === '') return 0
  const known = KNOWN[word]
  if (known !== undefined) return known
  const bare = word
    .replace(/(?<=[^aeiouylr]|[aeiouy][lr])es$/, (end) => (/(?:s|z|x|c|g|sh|ch)es$/.test(word) ? end : ''))
    .replace(/(?<=[^td])ed$/, '')
    .replace(/(?<=[^l]|[aeiouyl]l)e$/, '')
    .replace(/^y/, '')
  const groups = bare.match(/[aeiouy]+/g)?.length ?? 0
  const split = bare.match(/i[ao](?!us|n[stc]?$)|eo(?!u)|(?<![ct])iou|uou|[aeo]ing|ua(?=[tl])/g)?.length ?? 0
  return Math.max(1, groups + split)
}
