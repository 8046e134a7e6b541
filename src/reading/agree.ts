import type { Box } from '../records/source.ts'
import { sameValue } from './assemble/choose.ts'
import type { LabelUnit } from './find/groups.ts'
import { answers, type ReadingContext } from './find/read-value.ts'
import { rowsOf } from './layout/rows.ts'
import { joined } from './layout/strip.ts'
import type { PageWords, Word } from './page-words.ts'
import type { PageReadings, SecondReading, Statement } from './statement.ts'

/**
 * What the first reader says, each with what the second says of the same place; and what only the second could place,
 * with what the first says there. That two readers who know nothing of each other see the same is the best sign there
 * is that it is right.
 */
export function agreed(
  page: PageWords,
  first: PageReadings,
  second: PageReadings,
  context: ReadingContext,
): PageReadings {
  const others = page.secondWords ?? []
  const ours = first.statements.map((statement) => ({
    ...statement,
    second: secondOpinion(statement, second.statements, page, others, context),
  }))
  const theirs = second.statements
    .filter((statement) => !first.statements.some((known) => sameQuestion(known, statement)))
    .map((statement) => ({
      ...statement,
      // The second reader is the weaker one: alone it is believed less.
      fit: statement.fit * 0.8,
      second: secondOpinion(statement, first.statements, page, page.words, context),
    }))
  return {
    statements: [...ours, ...theirs],
    mentions: [...first.mentions, ...newMentions(first, second, theirs)],
  }
}

const sameQuestion = (a: Statement, b: Statement): boolean =>
  a.ask === b.ask &&
  a.kind === b.kind &&
  (a.ordinal === b.ordinal || a.ordinal === null || b.ordinal === null)

/** A component that only the second reader names counts where it also says something of it. */
const newMentions = (first: PageReadings, second: PageReadings, theirs: readonly Statement[]) =>
  second.mentions.filter(
    ({ kind }) =>
      theirs.some((statement) => statement.kind === kind) &&
      !first.mentions.some((known) => known.kind === kind),
  )

/** What another reader makes of the same question: by its own labels, or by its words where the value stands. */
function secondOpinion(
  statement: Statement,
  others: readonly Statement[],
  page: PageWords,
  words: readonly Word[],
  context: ReadingContext,
): SecondReading {
  const labeled = others.filter(
    (other) => sameQuestion(statement, other) && touches(statement.excerpt.box, other.excerpt.box, 0.5),
  )
  if (labeled.some(({ value }) => sameValue(value, statement.value)))
    return { says: 'same', value: statement.value }
  const there = valuesAt(statement, page, words, context)
  if (there.some((value) => sameValue(value, statement.value)))
    return { says: 'same', value: statement.value }
  const other = labeled[0]?.value ?? there[0]
  return other === undefined ? { says: 'nothing' } : { says: 'other', value: other }
}

function valuesAt(
  { ask, kind, value, excerpt }: Statement,
  page: PageWords,
  words: readonly Word[],
  context: ReadingContext,
): (string | number)[] {
  const there = words.filter((word) => touches(word.box, excerpt.box, 0.4))
  if (there.length === 0) return []
  const text = joined(rowsOf(page, there).flatMap(({ phrases }) => phrases.map(({ strip }) => strip))).text
  const unit = unitOf(value)
  return answers(text, { ask, kind, unit }, context).map((found) => found.value)
}

/** The unit that the value was given, so that a bare number at its place is taken in the same. */
function unitOf(value: string | number): LabelUnit | null {
  const unit = typeof value === 'string' ? /\s(ft|in|gal)$/.exec(value)?.[1] : undefined
  return (unit as LabelUnit | undefined) ?? null
}

/** Do two boxes share a good part of the smaller one, a little margin let in? */
function touches(a: Box, b: Box, share: number): boolean {
  const margin = 0.15 * Math.max(a.h, b.h)
  const w = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x) + margin
  const h = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y) + margin
  return w > 0 && h > 0 && w * h >= share * Math.min(a.w * a.h, b.w * b.h)
}
