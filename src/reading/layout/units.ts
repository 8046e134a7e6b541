import type { Phrase, Row } from './rows.ts'
import { around, joined } from './strip.ts'

/** What is read as one text: a phrase, or the lines of a paragraph together. */
export type Unit = Phrase & { readonly prose: boolean; readonly lastRow: number }

const FUNCTION_WORD =
  /^(?:the|was|were|is|are|to|of|and|with|by|from|in|on|for|has|have|at|a|an|this|that|be|been|which|it|as|shall|will|not|each)$/i
const LEAST_WORDS = 6
const LEAST_FUNCTION_WORDS = 2

/** The page's phrases, with lines of running text put together into paragraphs. */
export function unitsOf(rows: readonly Row[]): readonly Unit[] {
  const units: Unit[] = []
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at]!
    if (!isProse(row)) {
      units.push(...row.phrases.map((phrase) => ({ ...phrase, prose: false, lastRow: phrase.row })))
      continue
    }
    const paragraph = [row]
    while (rows[at + 1] && goesOn(paragraph.at(-1)!, rows[at + 1]!)) paragraph.push(rows[++at]!)
    const phrases = paragraph.flatMap((line) => line.phrases)
    units.push({
      strip: joined(phrases.map(({ strip }) => strip)),
      box: around(phrases.map(({ box }) => box)),
      row: phrases[0]!.row,
      place: 0,
      prose: true,
      lastRow: phrases.at(-1)!.row,
    })
  }
  return units
}

const wordsOf = (row: Row): string[] => row.phrases.flatMap(({ strip }) => strip.text.split(' '))

function isProse(row: Row): boolean {
  if (row.phrases.length !== 1) return false
  const words = wordsOf(row)
  const letters = words.filter((word) => /^[("']?[A-Za-z][a-z'’-]*[.,;:)"']*$/.test(word)).length
  const plain = words.filter((word) => FUNCTION_WORD.test(word)).length
  return (
    words.length >= LEAST_WORDS &&
    plain >= LEAST_FUNCTION_WORDS &&
    letters / words.length > 0.5 &&
    !/_{3}|:\s*$/.test(row.phrases[0]!.strip.text)
  )
}

/** The next line belongs to the paragraph: close below, flush left, and running on or prose itself. */
function goesOn(above: Row, below: Row): boolean {
  if (below.phrases.length !== 1) return false
  const gap = below.box.y - (above.box.y + above.box.h)
  const flush = Math.abs(below.box.x - above.box.x) < 0.02
  if (gap > 0.9 * above.box.h || !flush) return false
  return isProse(below) || !/[.:!?]["')]?$/.test(above.phrases[0]!.strip.text)
}
