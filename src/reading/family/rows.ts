import type { Box } from '../../records/source.ts'
import type { LinkedValue } from '../association/links.ts'
import type { PageWords } from '../page-words.ts'
import { answers, type ReadingContext } from '../values/answers.ts'
import { correctedFigures } from '../values/corrected.ts'
import type { Recognized } from './recognize.ts'
import type { TaughtRows } from './taught-form.ts'

/** Where one permit of a page begins: the number's left end and the middle of its height, on the page. */
export type Anchor = {
  readonly x: number
  readonly y: number
  readonly column: number
  readonly linked: boolean
}

/** How far left ends of one column may lie apart, in fractions of the page. */
const ACROSS = 0.012

/** How much higher or lower than on the sheets that taught it a first line may stand: a line of large type. */
const DOWN = 0.02

const middle = ({ y, h }: Box): number => y + h / 2

/** A place of the sheet on the page; the sheet lies nearly upright on it, so that the height may be taken as it is. */
const onPage = (form: Recognized, x: number, y: number): { x: number; y: number } => {
  const { x: left, y: top } = form.onto({ x, y, w: 0, h: 0 })
  return { x: left, y: top }
}

/** The permits of a page, by their numbers: where the links have one, or where words at its column can be one. */
export function anchorsOn(
  page: PageWords,
  form: Recognized,
  rows: TaughtRows,
  context: ReadingContext,
): readonly Anchor[] {
  const columnOf = ({ x, y, h }: Box): number =>
    rows.columns.findIndex((left) => Math.abs(onPage(form, left, y + h / 2).x - x) < ACROSS)
  const at = (box: Box, linked: boolean): Anchor[] => {
    const column = columnOf(box)
    if (column < 0) return []
    const [top, end] = [rows.from, rows.to].map((y) => onPage(form, rows.columns[column]!, y).y)
    const y = middle(box)
    return y < top! - DOWN || (rows.to < 1 && y > end! + DOWN) ? [] : [{ x: box.x, y, column, linked }]
  }
  const linked = (page.links?.values ?? []).flatMap((value) =>
    value.field === 'number' && value.score > 0.3 ? at(value.box, true) : [],
  )
  const written = page.words.flatMap((word) => {
    if (form.printed.has(word) || word.struck) return []
    const text = context.misread ? correctedFigures(word.text).text : word.text
    const [found] = answers(text, { ask: 'number', kind: null, unit: null }, context)
    return found ? at(word.box, false) : []
  })
  const kept: Anchor[] = []
  for (const one of [...linked, ...written])
    if (!kept.some(({ column, y }) => column === one.column && Math.abs(y - one.y) < 0.7 * rows.pitch))
      kept.push(one)
  return kept.sort((a, b) => a.y - b.y || a.x - b.x)
}

/** The form laid on one of a page's permits: its fields where they lie about this number. */
export function laidOnRow(form: Recognized, rows: TaughtRows, anchor: Anchor): Recognized {
  const from = onPage(form, rows.columns[anchor.column]!, anchor.y)
  const onto = ({ x, y, w, h }: Box): Box => {
    const there = form.onto({ x: rows.columns[anchor.column]! + x, y: anchor.y + y, w, h })
    return { ...there, x: there.x + anchor.x - from.x, y: there.y + anchor.y - from.y }
  }
  return { ...form, sheet: { ...form.sheet, fields: rows.fields }, onto }
}

/**
 * The page's values by the permits that the form knows the places of: which one each is of is no longer the model's guess.
 * What lies at none of them stays with what the model puts it together with, if most of that is of one permit.
 */
export function inRows(
  values: readonly LinkedValue[],
  anchors: readonly Anchor[],
  form: Recognized,
  rows: TaughtRows,
): LinkedValue[] {
  const edges = rows.columns.map((left) => onPage(form, left, 0.5).x - 2 * ACROSS)
  const rowOf = ({ box }: LinkedValue): number => {
    const [x, y] = [box.x + box.w / 2, middle(box)]
    const column = edges.findLastIndex((left) => x > left)
    const slack = 0.5 * box.h
    const near = anchors.flatMap((anchor, nth) =>
      anchor.column === column && y > anchor.y - rows.above - slack && y < anchor.y + rows.below + slack
        ? [nth]
        : [],
    )
    return near.length === 1 ? near[0]! : -1
  }
  const own = values.map(rowOf)
  const mostOf = (permit: number): number => {
    const placed = values.flatMap((value, nth) =>
      value.permit === permit && own[nth]! >= 0 ? [own[nth]!] : [],
    )
    const [row, ...others] = [...new Set(placed)].sort(
      (a, b) => placed.filter((it) => it === b).length - placed.filter((it) => it === a).length,
    )
    if (row === undefined) return -1
    return others.length === 0 || placed.filter((it) => it === row).length >= 0.6 * placed.length ? row : -1
  }
  return values.map((value, nth): LinkedValue => {
    const row = own[nth]! >= 0 ? own[nth]! : mostOf(value.permit)
    if (row < 0) return { ...value, permit: anchors.length + value.permit }
    return { ...value, permit: row, permitScore: own[nth]! >= 0 ? 1 : value.permitScore }
  })
}
