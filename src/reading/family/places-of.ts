import type { Box } from '../../records/source.ts'
import { sameValue } from '../assemble/choose.ts'
import { type Row, rowsOf } from '../layout/rows.ts'
import { excerpt, joined } from '../layout/strip.ts'
import { unitsOf } from '../layout/units.ts'
import type { PageWords } from '../page-words.ts'
import { answers, type ReadingContext } from '../values/answers.ts'
import { plain } from './alike.ts'
import type { Confirmed } from './lesson.ts'

/** A place where a confirmed value can be read. */
export type Place = {
  readonly box: Box
  /** As it stands there, plain. */
  readonly text: string
  /** The reading had found it just there. */
  readonly known: boolean
}

/** Every place on a page where a confirmed value can be read, wherever it came from. */
export function placesOf(
  { ask, kind, value, place }: Confirmed,
  page: PageWords,
  rows: readonly Row[],
  context: ReadingContext,
): Place[] {
  const unit = unitOf(value)
  const strips = rows.map(({ phrases }) => joined(phrases.map(({ strip }) => strip)))
  const spans = strips.flatMap((strip) => [
    ...answers(strip.text, { ask, kind, unit }, context)
      .filter((found) => sameValue(found.value, value))
      .map(({ start, end }) => excerpt(strip, start, end)),
    ...spelled(strip, String(value)).map(([start, end]) => excerpt(strip, start, end)),
  ])
  const places = spans.map(
    ({ box, words }): Place => ({
      box,
      text: plain(words),
      known: place !== null && place.page === page.page && overlaps(box, place.box),
    }),
  )
  return places.filter((one, index) => places.findIndex((other) => overlaps(one.box, other.box)) === index)
}

/** Lines of a page, once for all its values. Running text is none: what stands in it moves with every word before. */
export function linesOf(page: PageWords): readonly Row[] {
  const rows = rowsOf(page, page.words)
  const prose = unitsOf(rows).filter((unit) => unit.prose)
  return rows.filter((_, index) => !prose.some(({ row, lastRow }) => index >= row && index <= lastRow))
}

/** The unit that a value ends in, if any. */
export const unitOf = (value: string | number): 'ft' | 'in' | 'gal' | null =>
  typeof value === 'number' ? null : ((/\s(ft|in|gal)$/.exec(value)?.[1] as 'ft' | undefined) ?? null)

/** Runs of whole words that spell the value, whatever stands between its letters. */
function spelled(strip: ReturnType<typeof joined>, value: string): (readonly [number, number])[] {
  const wanted = plain(value)
  if (wanted.length < 3) return []
  const found: (readonly [number, number])[] = []
  strip.spots.forEach((first, index) => {
    let text = ''
    for (const spot of strip.spots.slice(index)) {
      text += plain(spot.word.text)
      if (text === wanted) found.push([first.at, spot.at + spot.length])
      if (text.length >= wanted.length) break
    }
  })
  return found
}

/** Do two boxes share half of the smaller? */
export function overlaps(a: Box, b: Box): boolean {
  const w = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x)
  const h = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y)
  return w > 0 && h > 0 && w * h >= 0.5 * Math.min(a.w * a.h, b.w * b.h)
}
