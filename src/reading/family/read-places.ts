import { isAbsorption } from '../../catalog/kinds.ts'
import type { Box } from '../../records/source.ts'
import type { Ask } from '../asks.ts'
import { rowsOf } from '../layout/rows.ts'
import { excerpt, joined } from '../layout/strip.ts'
import type { PageWords, Word } from '../page-words.ts'
import type { PageReadings, Statement } from '../statement.ts'
import { answers, type ReadingContext } from '../values/answers.ts'
import { type Recognized, seenAt } from './recognize.ts'
import type { FieldPlace } from './taught-form.ts'

/** How well a place says what it is of, where nothing but the value stands in it. */
const AT_PLACE = 0.97
/** A value read by its label where the form has another field: the label was likely another's. */
const ELSEWHERE = 0.5
/** Words may be misspelled, and no list of them says so: a place alone does not make them sure. */
const IN_WORDS = new Set<Ask>(['address', 'soilTexture', 'cornerA', 'cornerB', 'remarks'])
const UNCHECKED = 0.6
/** More stands in the box than the value: a piece of it was lost, or the value is a piece of something longer. */
const IN_PIECES = 0.5
/** The share of the letters in a box that the value must have, for a unit or a speck may stand beside it. */
const WHOLE = 0.85

/** What a page says at the places of its form, beside what it says by labels. */
export function withPlaces(
  page: PageWords,
  words: readonly Word[],
  own: PageReadings,
  recognized: Recognized,
  context: ReadingContext,
): PageReadings {
  const fields = recognized.sheet.fields.filter((field) => isThere(field, own, page, words, recognized))
  const placed = fields
    .flatMap((field) => valueAt(field, page, words, recognized, context) ?? [])
    .filter((piece) => !own.statements.some((whole) => isBeginningOf(piece, whole)))
  return {
    statements: [...own.statements.map((statement) => doubted(statement, placed)), ...placed],
    mentions: own.mentions,
  }
}

/** The same told by more words that begin with these: `7 -6"` where the place alone gives a 7. */
const isBeginningOf = (piece: Statement, whole: Statement): boolean =>
  piece.ask === whole.ask &&
  piece.excerpt.page === whole.excerpt.page &&
  whole.excerpt.words.length > piece.excerpt.words.length &&
  whole.excerpt.words.startsWith(piece.excerpt.words) &&
  Math.abs(whole.excerpt.box.x - piece.excerpt.box.x) < 0.005 &&
  Math.abs(whole.excerpt.box.y - piece.excerpt.box.y) < 0.005

/**
 * Forms have one place for what may be trenches, a bed or pits. Such a place counts where the paper names that kind, or
 * prints what stands beside the place wherever it holds that kind.
 */
function isThere(
  { kind, captions }: FieldPlace,
  { statements, mentions }: PageReadings,
  page: PageWords,
  words: readonly Word[],
  { onto }: Recognized,
): boolean {
  if (kind === null || !isAbsorption(kind)) return true
  const named = [...statements, ...mentions].flatMap((it) => it.kind ?? [])
  if (named.some((it) => it !== kind && it !== 'absorption' && isAbsorption(it))) return named.includes(kind)
  return named.includes(kind) || captions.some((mark) => seenAt(mark, onto(mark.box), words, page))
}

/** The value in the box of a field; null where none of its kind stands there. */
export function valueAt(
  { ask, kind, unit, box, left }: FieldPlace,
  page: PageWords,
  words: readonly Word[],
  { onto, printed }: Recognized,
  context: ReadingContext,
): Statement | null {
  const place = onto(box)
  const there = words.filter((word) => !printed.has(word) && centerIn(word.box, place))
  if (there.length === 0) return null
  const strip = joined(rowsOf(page, there).flatMap(({ phrases }) => phrases.map((phrase) => phrase.strip)))
  const [found, ...more] = answers(strip.text, { ask, kind, unit }, context)
  // Two values in one box: which of them it is, the place does not say.
  if (!found || more.length > 0) return null
  const letters = (text: string): number => text.replace(/[^A-Za-z0-9]/g, '').length
  const rest = strip.text.slice(0, found.start) + strip.text.slice(found.end).replace(UNIT_AFTER, '')
  const whole = letters(strip.text.slice(found.start, found.end))
  const shown = excerpt(strip, found.start, found.end)
  const begins = left === null ? shown.box.x : onto({ ...box, x: left }).x
  const isWhole =
    whole >= WHOLE * (whole + letters(rest)) &&
    !/\d/.test(rest) &&
    shown.box.x - begins < (0.8 * shown.box.w) / Math.max(1, found.end - found.start)
  return {
    ask,
    kind,
    ordinal: null,
    existing: false,
    why: null,
    value: found.value,
    excerpt: shown,
    fit: found.fit * AT_PLACE * (isWhole ? 1 : IN_PIECES) * (IN_WORDS.has(ask) ? UNCHECKED : 1),
    how: 'family',
    doubts: unit === null ? found.doubts : found.doubts.filter((doubt) => doubt.kind !== 'unit-assumed'),
    order: page.page * 1e6 + Math.round(shown.box.y * 1e3) * 1e3 + shown.box.x * 100,
  }
}

const UNIT_AFTER = /^\W*(?:gal(?:lon)?s?|ft|feet|in|inch(?:es)?|gpd|mpi)\b/i

function centerIn({ x, y, w, h }: Box, place: Box): boolean {
  const down = y + h / 2 - place.y
  return down > 0 && down < place.h && x + w / 2 > place.x && x + w / 2 < place.x + place.w
}

/**
 * The form knows whose place it is: what a label claims of it for another field weighs less, and so does what a label
 * found there where only a piece was read.
 */
function doubted(statement: Statement, placed: readonly Statement[]): Statement {
  const { box } = statement.excerpt
  const holder = placed.find(({ excerpt: { box: other, page } }) => {
    if (page !== statement.excerpt.page) return false
    const w = Math.min(box.x + box.w, other.x + other.w) - Math.max(box.x, other.x)
    const h = Math.min(box.y + box.h, other.y + other.h) - Math.max(box.y, other.y)
    return w > 0.5 * Math.min(box.w, other.w) && h > 0.5 * Math.min(box.h, other.h)
  })
  const isOthers =
    holder !== undefined &&
    (holder.ask !== statement.ask || (holder.kind !== statement.kind && statement.kind !== 'absorption'))
  if (isOthers) return { ...statement, fit: statement.fit * ELSEWHERE }
  return holder && !IN_WORDS.has(holder.ask) && holder.fit < AT_PLACE * IN_PIECES + 0.01
    ? { ...statement, fit: statement.fit * IN_PIECES }
    : statement
}
