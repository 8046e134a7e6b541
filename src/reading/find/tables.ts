import type { Box } from '../../records/source.ts'
import { excerpt, type SeenWord, type Strip, stripOf } from '../layout/strip.ts'
import type { Ask, SubjectKind } from '../lexicon/sense.ts'
import type { Mentioned, Statement } from '../statement.ts'
import type { Group, Label, Mention } from './groups.ts'
import { answers, type ReadingContext } from './read-value.ts'
import { orderOf, soleMention, type TextUnit } from './text-unit.ts'

export type TableReadings = {
  readonly statements: readonly Statement[]
  readonly mentions: readonly Mentioned[]
  /** Rows of the page that the tables fill: nothing else is read from them. */
  readonly rows: ReadonlySet<number>
}

type Column = { readonly head: Group | null; readonly box: Box }
type Line = { readonly row: number; readonly units: readonly TextUnit[] }

/** Tables: components down and measures across, or the other way round. */
export function tablesIn(units: readonly TextUnit[], context: ReadingContext): TableReadings {
  const lines = linesOf(units)
  const statements: Statement[] = []
  const mentions: Mentioned[] = []
  const used = new Set<number>()
  for (let at = 0; at < lines.length - 1; at++) {
    const header = lines[at]!
    if (used.has(header.row)) continue
    const columns = columnsOf(header)
    const measures = columns.filter(({ head }) => head?.is === 'label').length
    const names = columns.filter(({ head }) => head?.is === 'mention').length
    const across = measures >= 2 && names <= 1
    const down = names >= 2 && measures === 0
    if (!across && !down) continue
    const body = bodyOf(lines.slice(at + 1), header, across ? 'mention' : 'label')
    if (body.length === 0) continue
    used.add(header.row)
    let ordinals = new Map<SubjectKind, number>()
    const totals = new Map<SubjectKind, number>()
    for (const { head } of across ? body : columns)
      if (head?.is === 'mention') totals.set(head.kind, (totals.get(head.kind) ?? 0) + 1)
    const numbered = (mention: Mention): number | null => {
      if (mention.ordinal !== null) return mention.ordinal
      if ((totals.get(mention.kind) ?? 0) < 2) return null
      const next = (ordinals.get(mention.kind) ?? 0) + 1
      ordinals.set(mention.kind, next)
      return next
    }
    const columnOrdinals = new Map(
      columns.map(({ head }) => [head, head?.is === 'mention' ? numbered(head) : null]),
    )
    if (across) ordinals = new Map()
    for (const line of body) {
      used.add(line.row)
      const lineOrdinal = line.head.is === 'mention' ? numbered(line.head) : null
      if (line.head.is === 'mention') mentions.push(rowMention(line, line.head, lineOrdinal))
      for (const [column, strip] of cellsOf(line, columns)) {
        const [mention, label] =
          line.head.is === 'mention' ? [line.head, column.head] : [column.head, line.head]
        if (mention?.is !== 'mention' || label?.is !== 'label' || label.rule) continue
        const ordinal = line.head.is === 'mention' ? lineOrdinal : (columnOrdinals.get(column.head) ?? null)
        const statement = cell(strip, mention, label, ordinal, line, context)
        if (statement) statements.push(statement)
      }
    }
    if (down)
      for (const { head } of columns)
        if (head?.is === 'mention')
          mentions.push(
            rowMention({ ...header, head, unit: header.units[0]! }, head, columnOrdinals.get(head) ?? null),
          )
  }
  return { statements, mentions, rows: used }
}

function linesOf(units: readonly TextUnit[]): Line[] {
  const rows = new Map<number, TextUnit[]>()
  for (const unit of units) rows.set(unit.row, [...(rows.get(unit.row) ?? []), unit])
  return [...rows].map(([row, found]) => ({ row, units: found }))
}

/** Every group of a line is a column's head, if the line holds no values; other texts head columns that are not read. */
function columnsOf({ units }: Line): Column[] {
  if (units.length < 2 || units.some(({ prose }) => prose)) return []
  if (
    units.some(
      ({ groups, strip }) => /\d/.test(strip.text) && !groups.some((group) => group.is === 'mention'),
    )
  )
    return []
  return units
    .flatMap((unit): Column[] => {
      if (unit.groups.length === 0) return [{ head: bareHead(unit.strip.text), box: unit.box }]
      return unit.groups.map((head) => ({ head, box: excerpt(unit.strip, head.start, head.end).box }))
    })
    .sort((a, b) => a.box.x - b.box.x)
}

/** A head too short or common to be a label by itself: `No.`, `A`, `Type`, `Size` are clear over a column. */
function bareHead(text: string): Label | null {
  const asks: Record<string, Ask[]> = {
    no: ['count'],
    qty: ['count'],
    '#': ['count'],
    number: ['count'],
    a: ['tieA'],
    b: ['tieB'],
    type: ['material'],
    size: ['capacity', 'diameter', 'pipeDiameter'],
    l: ['length'],
    w: ['width'],
    d: ['depth'],
    gal: ['capacity'],
    gallons: ['capacity'],
    mat: ['material'],
    dia: ['diameter'],
    'l ft': ['length'],
  }
  const plain = text
    .toLowerCase()
    .replace(/[^a-z# ]/g, '')
    .trim()
  const known = asks[plain]
  if (!known) return null
  return {
    is: 'label',
    start: 0,
    end: text.length,
    asks: known,
    kind: null,
    unit: plain.startsWith('gal') ? 'gal' : null,
    rule: false,
    weak: false,
    place: 'before',
    marked: false,
    likeness: 1,
  }
}

type BodyLine = Line & { readonly head: Mention | Label; readonly unit: TextUnit }

/** Lines under a header that each begin with a name (or a measure), as far as they follow without a gap. */
function bodyOf(lines: readonly Line[], header: Line, wanted: 'mention' | 'label'): BodyLine[] {
  const body: BodyLine[] = []
  let above = header
  for (const line of lines) {
    const gap = line.units[0]!.box.y - (above.units[0]!.box.y + above.units[0]!.box.h)
    const height = line.units[0]!.box.h
    const unit = line.units.find((one) =>
      wanted === 'mention' ? soleMention(one) !== undefined : one.groups[0]?.is === 'label',
    )
    const head =
      wanted === 'mention'
        ? unit && soleMention(unit)
        : unit?.groups.find((group): group is Label => group.is === 'label')
    const first = line.units[0]!
    const isFirst = unit !== undefined && (unit === first || /^\W*\d{0,2}\W*$/.test(first.strip.text))
    if (!unit || !head || !isFirst || gap > 3 * height || line.units.some(({ prose }) => prose)) {
      // A row of a measure that is not wanted goes through, so that the table does not end at it.
      if (body.length > 0 && gap < 2 * height && line.units.length > 1 && first.groups[0]?.is === 'decoy') {
        above = line
        continue
      }
      break
    }
    body.push({ ...line, head, unit })
    above = line
  }
  return body
}

/** The words of a line under each column, apart from those that name the line. */
function cellsOf(line: BodyLine, columns: readonly Column[]): Map<Column, Strip> {
  const cells = new Map<Column, SeenWord[]>()
  for (const unit of line.units) {
    if (unit === line.unit) continue
    for (const { word } of unit.strip.spots) {
      const column = columnOf(word.box, columns)
      if (column) cells.set(column, [...(cells.get(column) ?? []), word])
    }
  }
  const page = line.units[0]!.strip.spots[0]!.page
  return new Map([...cells].map(([column, words]) => [column, stripOf(words, page)]))
}

function columnOf(box: Box, columns: readonly Column[]): Column | undefined {
  const center = box.x + box.w / 2
  const overlapping = columns.filter(
    (column) => box.x < column.box.x + column.box.w && box.x + box.w > column.box.x,
  )
  if (overlapping.length === 1) return overlapping[0]
  const distance = (column: Column): number =>
    Math.min(Math.abs(box.x - column.box.x), Math.abs(center - (column.box.x + column.box.w / 2)))
  return [...(overlapping.length > 0 ? overlapping : columns)].sort((a, b) => distance(a) - distance(b))[0]
}

function cell(
  strip: Strip,
  mention: Mention,
  label: Label,
  ordinal: number | null,
  line: BodyLine,
  context: ReadingContext,
): Statement | null {
  for (const ask of label.asks) {
    const found = answers(strip.text, { ask, kind: mention.kind, unit: label.unit }, context)[0]
    if (!found) continue
    return {
      ask,
      kind: mention.kind,
      ordinal,
      value: found.value,
      excerpt: excerpt(strip, found.start, found.end),
      fit: found.fit * label.likeness * mention.likeness * 0.97,
      how: 'table',
      doubts: found.doubts,
      order: orderOf(line.unit, 0),
    }
  }
  return null
}

const rowMention = (line: BodyLine, head: Mention, ordinal: number | null): Mentioned => ({
  kind: head.kind,
  ordinal,
  excerpt: excerpt(line.unit.strip, head.start, head.end),
  order: orderOf(line.unit, 0),
  as: 'row',
  likeness: head.likeness,
})
