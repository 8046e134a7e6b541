import type { Box } from '../../records/source.ts'
import { excerpt } from '../layout/strip.ts'
import type { Ask } from '../lexicon/sense.ts'
import type { Statement } from '../statement.ts'
import type { Found } from '../values/found.ts'
import type { Label } from './groups.ts'
import type { Labeled } from './inline.ts'
import { answers, type ReadingContext } from './read-value.ts'
import type { SubjectAt } from './subjects.ts'
import { isTaken, orderOf, type TextUnit } from './text-unit.ts'

type Side = 'right' | 'below' | 'above'
type Slot = {
  readonly side: Side
  readonly unit: TextUnit
  readonly ask: Ask
  readonly found: Found
  readonly near: number
}

/** How far a value may lie above or below its label, in heights of the label's text, edge to edge. */
const REACH = { below: 2.2, above: 1.3 } as const
const IN_WORDS = new Set<Ask>(['address', 'cornerA', 'cornerB', 'remarks', 'soilTexture', 'kind'])

/**
 * Values for labels that have none in their own text: right of the label, below it, or above it where captions stand
 * under their blanks. Which of them a page means is what most of its labels agree on.
 */
export function slottedValues(
  labeled: readonly Labeled[],
  units: readonly TextUnit[],
  subjectAt: SubjectAt,
  context: ReadingContext,
): Statement[] {
  const open = labeled
    .filter(
      ({ statement, unit, label }) =>
        statement === null && !unit.prose && label.place !== 'after' && endsUnit(unit, label),
    )
    .map(({ unit, label }) => ({ unit, label, slots: slotsOf(unit, label, units, subjectAt, context) }))
  const votes: Record<Side, number> = { right: 0.5, below: 0.25, above: 0 }
  for (const { slots } of open) {
    const sides = new Set(slots.map(({ side }) => side))
    if (sides.size === 1) for (const side of sides) votes[side] += 1
  }
  const most = Math.max(...Object.values(votes))
  const offers = open.flatMap(({ unit, label, slots }) =>
    slots.map((slot) => ({
      unit,
      label,
      slot,
      score:
        slot.found.fit *
        slot.near *
        label.likeness *
        (label.weak ? 0.7 : 1) *
        (0.7 + 0.3 * (votes[slot.side] / most)),
    })),
  )
  const settled = new Set<Label>()
  return offers
    .sort((a, b) => b.score - a.score)
    .flatMap(({ unit, label, slot, score }) => {
      if (settled.has(label) || isTaken(slot.unit, slot.found.start, slot.found.end)) return []
      settled.add(label)
      slot.unit.taken.push({ start: slot.found.start, end: slot.found.end })
      if (label.rule) return []
      const subject = subjectAt(unit, label.start, { asks: [slot.ask] })
      return [
        {
          ask: slot.ask,
          kind: label.kind ?? subject?.kind ?? null,
          ordinal: label.kind === null || label.kind === subject?.kind ? (subject?.ordinal ?? null) : null,
          value: slot.found.value,
          excerpt: excerpt(slot.unit.strip, slot.found.start, slot.found.end),
          fit: Math.min(1, score / 0.95),
          how: 'label' as const,
          doubts: slot.found.doubts,
          order: orderOf(unit, label.start),
        },
      ]
    })
}

/** Nothing but marks stands after the label in its text, so its value can only be elsewhere. */
const endsUnit = (unit: TextUnit, label: Label): boolean => {
  const next = unit.groups.find((group) => group.start >= label.end)
  const rest = unit.strip.text.slice(label.end, next?.start ?? unit.strip.text.length)
  return (
    rest.replace(/[^A-Za-z0-9]/g, '').length <= 3 ||
    /^\s*\([^)]*\)?\W*$/.test(rest) ||
    (!label.marked && !/\d/.test(rest) && next === undefined && rest.length < 24)
  )
}

function slotsOf(
  unit: TextUnit,
  label: Label,
  units: readonly TextUnit[],
  subjectAt: SubjectAt,
  context: ReadingContext,
): Slot[] {
  // `Septic tank: from A`: the name before the label belongs to its column, another label does not.
  const previous = unit.groups.findLast((group) => group.is !== 'mention' && group.end <= label.start)
  const box = excerpt(unit.strip, previous?.end ?? 0, label.end).box
  const next = unit.groups.find((group) => group.start >= label.end)
  const edge = rightEdge(unit, box, next ? excerpt(unit.strip, next.start, next.end).box : undefined, units)
  const places: { side: Side; unit: TextUnit; near: number }[] = []
  const right =
    next === undefined
      ? units.find((other) => other.row === unit.row && other.place === unit.place + 1)
      : undefined
  if (right) places.push({ side: 'right', unit: right, near: 0.95 })
  for (const side of ['below', 'above'] as const) {
    const other = nearest(side, unit, box, edge, units)
    if (other) places.push({ side, ...other })
  }
  return places.flatMap(({ side, unit: other, near }) => {
    for (const ask of label.asks) {
      if (opensWithLabel(other, ask)) continue
      const question = {
        ask,
        kind: label.kind ?? subjectAt(unit, label.start, { asks: [ask] })?.kind ?? null,
        unit: label.unit,
      }
      const found = answers(partUnder(other, box, edge, side), question, context).find(
        (value) =>
          !isTaken(other, value.start, value.end) &&
          /^[\s:=("#_-]*(?:no\.?)?\s*$/i.test(other.strip.text.slice(0, value.start).slice(-3)),
      )
      if (found) return [{ side, unit: other, ask, found, near }]
    }
    return []
  })
}

/** A text that begins with a label or a name of its own is no value. */
function opensWithLabel(unit: TextUnit, ask: Ask): boolean {
  const first = unit.groups[0]
  if (!first || first.start > 2) return false
  if (first.is === 'mention') return !IN_WORDS.has(ask)
  if (first.is === 'label' && first.place === 'after') return false
  return first.is === 'decoy' || first.marked || !first.weak
}

/** Where the next text of the label's line begins: a column ends there. */
function rightEdge(unit: TextUnit, box: Box, next: Box | undefined, units: readonly TextUnit[]): number {
  if (next) return next.x
  const beside = units.find((other) => other.row === unit.row && other.place > unit.place)
  return beside ? beside.box.x : Math.max(1, box.x)
}

function nearest(
  side: 'below' | 'above',
  unit: TextUnit,
  box: Box,
  edge: number,
  units: readonly TextUnit[],
): { unit: TextUnit; near: number } | undefined {
  const within = units
    .filter((other) => !other.prose && other.row !== unit.row)
    .map((other) => ({
      other,
      gap: side === 'below' ? other.box.y - (box.y + box.h) : box.y - (other.box.y + other.box.h),
    }))
    .filter(
      ({ other, gap }) =>
        gap > -0.4 * box.h &&
        gap < REACH[side] * Math.max(box.h, other.box.h) &&
        other.box.x < edge - 0.004 &&
        other.box.x + other.box.w > box.x &&
        other.box.x > box.x - 0.06,
    )
    .sort((a, b) => a.gap - b.gap || a.other.box.x - b.other.box.x)
  // Words of one line stand a little higher and lower: of the nearest line the first is meant.
  const best = within
    .filter(({ other }) => other.row === within[0]!.other.row)
    .sort((a, b) => a.other.box.x - b.other.box.x)[0]
  if (!best) return undefined
  const away = Math.max(0, best.gap) / Math.max(box.h, best.other.box.h)
  return { unit: best.other, near: 0.95 - 0.08 * away }
}

/** Where one text runs under several columns, only its part in this one is looked at; the rest becomes blanks. */
function partUnder(other: TextUnit, box: Box, edge: number, side: Side): string {
  const { text, spots } = other.strip
  if (side === 'right') return text
  let part = text
  for (const { at, length, word } of spots) {
    const center = word.box.x + word.box.w / 2
    if (center < box.x - 0.06 || center > edge + 0.01)
      part = part.slice(0, at) + ' '.repeat(length) + part.slice(at + length)
  }
  return part
}
