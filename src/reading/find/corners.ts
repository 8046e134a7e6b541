import { excerpt } from '../layout/strip.ts'
import type { Statement } from '../statement.ts'
import { cornerWords } from '../values/corner.ts'
import { findLengths } from '../values/length.ts'
import { isTaken, orderOf, type TextUnit } from './text-unit.ts'

const NAMED = (letter: 'A' | 'B'): RegExp =>
  new RegExp(
    String.raw`(?:\b(?:corner|cor\.?|point|pt\.?|ref\.?(?:erence)?(?:\s+(?:corner|point|pt\.?))?)\s*)?["'(]?\b${letter}\b["')]?\s*(?:=|:|\bis\b|\bbeing\b|-{1,2})\s*(?:\bat\b\s*)?(?:\bthe\b\s*)?([A-Za-z][A-Za-z .'/-]{3,70}?)(?=\s*(?:$|[,;=]|\.(?:\s|$)|\band\b|\(|\d|\s["'(]?(?:corner\s*)?[AB]["')]?\s*(?:=|:|\bis\b|\b[Tt][Oo]\b|-)))`,
  )
const A_TO_B = /\bA\s*(?:to|-|–|&|and)\s*B\b["')]?\s*(?:=|:|is|-)?\s*/
/** What a house corner is told by (common practice). */
const PLACE =
  /corner|cor\b|porch|chimney|garage|house|dwelling|foundation|steps|door|front|rear|back|left|right|\b(?:n|s)\.?\s?[ew]\b|north|south|east|west/i

/** `A = NE corner of house, B = NW corner, A to B 40'-0"`: the corners that ties run from, where running text names them. */
export function cornersIn(unit: TextUnit, misread: boolean): Statement[] {
  const { text } = unit.strip
  const statements: Statement[] = []
  const add = (
    ask: 'cornerA' | 'cornerB' | 'baseline',
    start: number,
    end: number,
    value: string,
    fit: number,
  ): void => {
    if (isTaken(unit, start, end)) return
    unit.taken.push({ start, end })
    statements.push({
      ask,
      kind: null,
      ordinal: null,
      value,
      excerpt: excerpt(unit.strip, start, end),
      fit,
      how: unit.prose ? 'prose' : 'label',
      doubts: [],
      order: orderOf(unit, start),
    })
  }
  for (const letter of ['A', 'B'] as const) {
    const match = NAMED(letter).exec(text)
    const words = match?.[1]?.trim().replace(/[\s.,-]+$/, '')
    if (!match || words === undefined || !PLACE.test(words)) continue
    const start = match.index + match[0].lastIndexOf(match[1]!)
    const { text: value, isWhole } = misread ? cornerWords(words) : { text: words, isWhole: true }
    add(letter === 'A' ? 'cornerA' : 'cornerB', start, start + words.length, value, isWhole ? 0.93 : 0.56)
  }
  const between = A_TO_B.exec(text)
  if (between) {
    const from = between.index + between[0].length
    const found = findLengths(text.slice(from, from + 24))[0]
    if (found && found.start <= 4) add('baseline', from + found.start, from + found.end, found.value, 0.95)
  }
  return statements
}
