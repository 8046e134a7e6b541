import type { Box } from '../../records/source.ts'
import { around } from '../layout/strip.ts'
import type { ReadingContext } from '../values/answers.ts'
import { agreedPlace, isPrinted, type Laid, sharedLeft, unitFor } from './field-places.ts'
import type { Confirmed } from './lesson.ts'
import { type Place, placesOf } from './places-of.ts'
import type { FieldPlace, TaughtRows } from './taught-form.ts'

/** A sheet of several permits, what was confirmed of each, and how it lies on the sheet that is learned. */
export type LaidLeaf = Omit<Laid, 'values'> & { readonly permits: readonly (readonly Confirmed[])[] }

/** A permit of a leaf: where its number stands on the sheet that is learned. */
type Permit = { readonly leaf: LaidLeaf; readonly values: readonly Confirmed[]; readonly number: Box }

const ACROSS = 0.012
/** Values of one permit lie no farther from its number than this, in heights of the page: half of it. */
const FARTHEST = 0.5
const middle = ({ y, h }: Box): number => y + h / 2
const isNumber = ({ ask }: Confirmed): boolean => ask === 'number'

/** Where permits begin on such sheets, and where their values lie about the number; null where that is never the same. */
export function rowsFrom(leaves: readonly LaidLeaf[], context: ReadingContext): TaughtRows | null {
  const spelled = { ...context, misread: false }
  const permits = leaves.flatMap((leaf) =>
    leaf.permits.flatMap((values): Permit[] => {
      const number = values.find(isNumber)
      const [place] = number ? placesOf(number, leaf.page, leaf.lines, spelled) : []
      return place ? [{ leaf, values, number: leaf.onto(place.box) }] : []
    }),
  )
  const columns = columnsOf(permits)
  const columnOf = ({ number }: Permit): number =>
    columns.findIndex((left) => Math.abs(left - number.x) < ACROSS)
  const begun = permits.filter((permit) => columnOf(permit) >= 0)
  if (columns.length === 0 || columns.length > 6 || begun.length < 0.6 * permits.length) return null
  const gaps = leaves.flatMap((leaf) =>
    columns.flatMap((_, column) => {
      const ys = begun
        .filter((permit) => permit.leaf === leaf && columnOf(permit) === column)
        .map(({ number }) => middle(number))
        .sort((a, b) => a - b)
      return ys.slice(1).map((y, nth) => y - ys[nth]!)
    }),
  )
  const pitch = Math.min(0.9, ...gaps)
  const fields = fieldsAbout(begun, pitch, spelled)
  if (fields.length === 0) return null
  const ys = begun.map(({ number }) => middle(number))
  const boxes = fields.map(({ box }) => box)
  // A number stands in the first line of its permit or near it: a line of room is left above, below and between.
  const line = Math.max(...begun.map(({ number }) => number.h))
  return {
    columns,
    from: Math.min(...ys),
    // A book goes on to the end of its leaf; cards have their places.
    to: gaps.length > 0 ? 1 : Math.max(...ys),
    pitch,
    above: Math.max(line / 2, ...boxes.map(({ y, h }) => -(y + h / 2))),
    below: Math.max(line / 2, ...boxes.map(({ y, h }) => y + h / 2)),
    fields,
  }
}

/** Left ends that numbers have on two leaves at the least. */
function columnsOf(permits: readonly Permit[]): number[] {
  const columns: Permit[][] = []
  for (const permit of [...permits].sort((a, b) => a.number.x - b.number.x)) {
    const column = columns.at(-1)
    if (column && permit.number.x - column[0]!.number.x < ACROSS) column.push(permit)
    else columns.push([permit])
  }
  return columns
    .filter((column) => new Set(column.map(({ leaf }) => leaf)).size > 1)
    .map((column) => column[Math.floor(column.length / 2)]!.number.x)
}

function fieldsAbout(permits: readonly Permit[], pitch: number, context: ReadingContext): FieldPlace[] {
  const questions = new Map<string, Confirmed>()
  for (const value of permits.flatMap(({ values }) => values))
    if (!isNumber(value)) questions.set(`${value.kind ?? ''} ${value.ask}`, value)
  const places = [...questions.values()].flatMap(({ ask, kind }) => {
    const papers = permits.flatMap(({ leaf, values, number }) => {
      const value = values.find((known) => known.ask === ask && known.kind === kind)
      if (!value) return []
      const about = (box: Box): Box => ({ ...box, x: box.x - number.x, y: box.y - middle(number) })
      const all = placesOf(value, leaf.page, leaf.lines, context)
        .map((place): Place => ({ ...place, box: about(leaf.onto(place.box)) }))
        .filter(({ box }) => Math.abs(middle(box)) < Math.min(FARTHEST, pitch))
      return [{ value, places: all }]
    })
    const place = agreedPlace(papers.map((paper) => paper.places))
    if (!place || isPrinted(place, ask)) return []
    const unit = unitFor(papers.map(({ value }) => value))
    return [{ ask, kind, unit, seen: around(place.map(({ box }) => box)), place }]
  })
  return places.map(({ ask, kind, unit, seen, place }): FieldPlace => {
    const beside = places.filter(
      (other) => other.place !== place && Math.abs(middle(other.seen) - middle(seen)) < seen.h / 2,
    )
    const before = beside.map((other) => other.seen.x + other.seen.w).filter((end) => end <= seen.x)
    const after = beside.map((other) => other.seen.x).filter((start) => start >= seen.x + seen.w)
    const left = Math.max(seen.x - 0.015, ...before)
    const right = Math.min(seen.x + seen.w + 0.02, ...after)
    const box = { x: left, y: seen.y - 0.45 * seen.h, w: right - left, h: 1.9 * seen.h }
    const begins = sharedLeft(place.map(({ box: at }) => at))
    return { ask, kind, unit, box, left: begins, captions: [], papers: place.length }
  })
}
