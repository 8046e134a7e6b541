import type { Box } from '../../records/source.ts'
import type { Ask } from '../asks.ts'
import type { Row } from '../layout/rows.ts'
import { around } from '../layout/strip.ts'
import type { PageWords } from '../page-words.ts'
import type { ReadingContext } from '../values/answers.ts'
import type { Confirmed } from './lesson.ts'
import { overlaps, type Place, placesOf, unitOf } from './places-of.ts'
import type { FieldPlace, Mark } from './taught-form.ts'

/** A paper of a form, and how it lies on the sheet. */
export type Laid = {
  readonly page: PageWords
  readonly values: readonly Confirmed[]
  readonly onto: (box: Box) => Box
  readonly lines: readonly Row[]
}

/** Answers from a short list: the same words stand printed on forms to be ticked, so only a change tells a value. */
const LISTED = new Set<Ask>(['kind', 'material', 'shape'])
/** How far left ends, right ends or middles of one field may lie apart, across and down, in fractions of the page. */
const ACROSS = 0.02
const DOWN = 0.01
/** Of the papers that have the field, the share that must have it at the place, and how many at the least. */
const MOST_OF_THEM = 0.6
const LEAST_PAPERS = 3

/** Where each field lies: the one place at which what was confirmed can be read, paper after paper. */
export function fieldPlaces(
  laid: readonly Laid[],
  marks: readonly Mark[],
  context: ReadingContext,
): FieldPlace[] {
  const questions = new Map<string, Confirmed>()
  for (const value of laid.flatMap(({ values }) => values))
    questions.set(`${value.kind ?? ''} ${value.ask}`, value)
  return [...questions.values()].flatMap(({ ask, kind }): FieldPlace[] => {
    const papers = laid.flatMap(({ page, values, onto, lines }) => {
      const value = values.find((known) => known.ask === ask && known.kind === kind)
      if (!value) return []
      // What a person confirmed is looked for as it is spelled: where it was misread, nothing is learned from it.
      const places = placesOf(value, page, lines, { ...context, misread: false })
      return [{ value, places: places.map((place): Place => ({ ...place, box: onto(place.box) })) }]
    })
    const place = agreedPlace(papers.map(({ places }) => places))
    if (!place || isPrinted(place, ask)) return []
    const unit = unitFor(papers.map(({ value }) => value))
    const box = roomFor(around(place.map(({ box: at }) => at)), marks)
    const left = sharedLeft(boxesOf(place))
    return [
      { ask, kind, unit, box, left, captions: captionsOf(box, marks, kind, laid), papers: place.length },
    ]
  })
}

/** The same words on every paper are print as far as can be told, unless the reading had found the value just there. */
export const isPrinted = (place: readonly Place[], ask: Ask): boolean =>
  new Set(place.map(({ text }) => text)).size === 1 && (LISTED.has(ask) || !place.every(({ known }) => known))

/** The unit that all values of a field end in, if they have one. */
export function unitFor(values: readonly Confirmed[]): FieldPlace['unit'] {
  const [unit = null, ...others] = new Set(values.map(({ value }) => unitOf(value)))
  return others.length === 0 ? unit : null
}

/** One place for each paper that has it, where enough of them have and no other place is as good. */
export function agreedPlace(papers: readonly (readonly Place[])[]): readonly Place[] | null {
  const runs = papers.flatMap((places) =>
    places.map((seed) =>
      papers.flatMap((others) => others.find((other) => liesAt(seed.box, other.box)) ?? []),
    ),
  )
  const worth = (run: readonly Place[]): number =>
    run.length + run.filter(({ known }) => known).length / (papers.length + 1)
  const [best, ...others] = runs.sort((a, b) => worth(b) - worth(a))
  if (!best || best.length < Math.max(LEAST_PAPERS, MOST_OF_THEM * papers.length)) return null
  const rival = others.some(
    (run) => worth(run) >= worth(best) - 1e-9 && !overlaps(around(boxesOf(run)), around(boxesOf(best))),
  )
  return rival ? null : best
}

const boxesOf = (run: readonly Place[]): Box[] => run.map(({ box }) => box)

/** How far apart the beginnings of values may lie that begin at one place: less than a figure of small type. */
const FLUSH = 0.006

export function sharedLeft(boxes: readonly Box[]): number | null {
  const lefts = boxes.map(({ x }) => x).sort((a, b) => a - b)
  const middle = lefts[Math.floor(lefts.length / 2)]!
  return lefts.every((x) => Math.abs(x - middle) < FLUSH) ? middle : null
}

/** Values of one field begin together, end together or are centerd over each other. */
function liesAt(a: Box, b: Box): boolean {
  if (Math.abs(a.y + a.h / 2 - (b.y + b.h / 2)) > DOWN) return false
  const offsets = [a.x - b.x, a.x + a.w - (b.x + b.w), a.x + a.w / 2 - (b.x + b.w / 2)]
  return offsets.some((offset) => Math.abs(offset) < ACROSS)
}

/** Longer values will come than were seen: the box goes on to the print beside it, half a line up and down. */
function roomFor({ x, y, w, h }: Box, marks: readonly Mark[]): Box {
  const line = marks.filter(({ box }) => box.y < y + h && box.y + box.h > y)
  const before = line.map(({ box }) => box.x + box.w).filter((end) => end <= x + 0.01)
  const after = line.map(({ box }) => box.x).filter((start) => start >= x + w - 0.01)
  const left = Math.max(x - 0.03, 0, ...before)
  const right = Math.min(x + w + Math.max(w, 0.08), 1, ...after)
  return { x: left, y: y - 0.45 * h, w: Math.max(right, x + w) - left, h: 1.9 * h }
}

/** Print close to a place, of the papers that have a component of the kind there and not of the others. */
function captionsOf(box: Box, marks: readonly Mark[], kind: string | null, laid: readonly Laid[]): Mark[] {
  if (kind === null) return []
  const without = laid.filter(({ values }) => !values.some((value) => value.kind === kind))
  if (without.length > 0) return []
  return marks
    .map((mark) => ({
      mark,
      away: Math.max(0, box.x - (mark.box.x + mark.box.w)) + 2 * Math.abs(mark.box.y - box.y),
    }))
    .filter(({ away, mark }) => away < 0.12 && mark.box.x < box.x + box.w)
    .sort((a, b) => a.away - b.away)
    .slice(0, 4)
    .map(({ mark }) => mark)
}
