import { excerpt } from '../layout/strip.ts'
import type { Ask } from '../lexicon/sense.ts'
import type { Statement } from '../statement.ts'
import type { Found } from '../values/found.ts'
import type { Label } from './groups.ts'
import { answers, type ReadingContext } from './read-value.ts'
import type { SubjectAt } from './subjects.ts'
import { isTaken, orderOf, type TextUnit } from './text-unit.ts'

/** Asks whose value is words: it runs on over names and marks that would end a figure. */
const IN_WORDS = new Set<Ask>(['address', 'cornerA', 'cornerB', 'remarks', 'soilTexture', 'kind'])
/** What may stand between a label and its value. */
const BRIDGE =
  /^[\s):=.,_*-]*(?:(?:of|is|was|are|were|at|about|approx\.?|approximately|equals?|the|a|to be|being|no\.?|#|on|measured|found|taken as|installed|date|by|it|this|the work|the system|the installation)\s+){0,3}[("]*$/i

/** A label with the value that was found for it in its own text, or without one. */
export type Labeled = {
  readonly unit: TextUnit
  readonly label: Label
  readonly statement: Statement | null
}

/** Labels of a text and the values that stand beside them in the same text. */
export function inlineValues(unit: TextUnit, subjectAt: SubjectAt, context: ReadingContext): Labeled[] {
  const labels = unit.groups.filter((group): group is Label => group.is === 'label')
  const done = new Map<Label, Statement>()
  const settle = (label: Label, side: 'after' | 'before'): void => {
    if (done.has(label)) return
    const statement =
      side === 'after'
        ? valueAfter(unit, label, subjectAt, context)
        : valueBefore(unit, label, subjectAt, context)
    if (statement) done.set(label, statement)
  }
  for (const label of labels) if (label.marked && label.place !== 'after') settle(label, 'after')
  for (const label of labels) if (label.place === 'after') settle(label, 'before')
  // A text that begins with a label gives label, then value; one that begins with a value gives value, then label.
  const opensWithLabel =
    labels[0] !== undefined && /^[\s([]*$/.test(unit.strip.text.slice(0, labels[0].start))
  for (const label of labels) {
    if (label.place === 'before') settle(label, 'after')
    if (label.place === 'either') {
      settle(label, opensWithLabel || label.marked ? 'after' : 'before')
      settle(label, opensWithLabel || label.marked ? 'before' : 'after')
    }
  }
  return labels.map((label) => ({ unit, label, statement: done.get(label) ?? null }))
}

function valueAfter(
  unit: TextUnit,
  label: Label,
  subjectAt: SubjectAt,
  context: ReadingContext,
): Statement | null {
  const { text } = unit.strip
  for (const ask of label.asks) {
    const next = unit.groups.find(
      (group) =>
        group.start >= label.end &&
        !(
          IN_WORDS.has(ask) &&
          (group.is === 'mention' || (group.is === 'label' && !group.marked && ask !== 'cornerA')) &&
          !unit.prose
        ),
    )
    const gap = text.slice(label.end, next?.start ?? text.length)
    // The point of `No.` belongs to the label; the next one ends the sentence.
    const sentence = unit.prose ? /^\W*(?:[^.;]|[.;](?=\S))*/.exec(gap)![0] : gap
    const found = answers(sentence, question(unit, label, ask, subjectAt), context).find(
      (value) =>
        !isTaken(unit, label.end + value.start, label.end + value.end) &&
        BRIDGE.test(sentence.slice(0, value.start)),
    )
    if (found)
      return stated(
        unit,
        label,
        ask,
        { ...found, start: found.start + label.end, end: found.end + label.end },
        subjectAt,
      )
  }
  return null
}

function valueBefore(
  unit: TextUnit,
  label: Label,
  subjectAt: SubjectAt,
  context: ReadingContext,
): Statement | null {
  const { text } = unit.strip
  const from = Math.max(
    0,
    ...unit.groups.filter((group) => group.end <= label.start).map((group) => group.end),
  )
  // `6 in diameter`: the joint of the label is the unit of the value.
  const unitWord = /^(?:in|ft)\b\.?/i.exec(text.slice(label.start))?.[0].length ?? 0
  for (const ask of label.asks) {
    for (const end of unitWord > 0 ? [label.start, label.start + unitWord] : [label.start]) {
      const found = answers(text.slice(from, end), question(unit, label, ask, subjectAt), context)
        .filter((value) => !isTaken(unit, from + value.start, from + value.end))
        .at(-1)
      if (!found || !/^[\s)_"-]*(?:in\s)?$/.test(text.slice(from + found.end, label.start))) continue
      if (
        end === label.start &&
        unitWord > 0 &&
        found.doubts.some(({ kind }) => kind === 'unit-assumed') &&
        /^in\s+d/i.test(text.slice(label.start)) === false
      )
        continue
      return stated(
        unit,
        label,
        ask,
        { ...found, start: from + found.start, end: from + found.end },
        subjectAt,
      )
    }
  }
  return null
}

const question = (unit: TextUnit, label: Label, ask: Ask, subjectAt: SubjectAt) => ({
  ask,
  kind: label.kind ?? subjectAt(unit, label.start, { asks: [ask] })?.kind ?? null,
  unit: label.unit,
})

/** A statement of a labeled value; the stretch it was read from is taken, and a rule's value is taken and left out. */
function stated(
  unit: TextUnit,
  label: Label,
  ask: Ask,
  found: Found,
  subjectAt: SubjectAt,
): Statement | null {
  unit.taken.push({ start: found.start, end: found.end })
  if (label.rule) return null
  const subject = subjectAt(unit, label.start, {
    asks: [ask],
    ...(label.place === 'before' ? {} : { end: Math.max(label.end, found.end) }),
  })
  return {
    ask,
    kind: label.kind ?? subject?.kind ?? null,
    ordinal: label.kind === null || label.kind === subject?.kind ? (subject?.ordinal ?? null) : null,
    value: found.value,
    excerpt: excerpt(unit.strip, found.start, found.end),
    fit: found.fit * label.likeness * (label.weak ? 0.85 : 1),
    how: unit.prose ? 'prose' : 'label',
    doubts: found.doubts,
    order: orderOf(unit, label.start),
  }
}
