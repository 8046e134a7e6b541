import type { Box } from '../records/source.ts'
import type { LabelUnit } from './asks.ts'
import { sameValue } from './assemble/choose.ts'
import { rowsOf } from './layout/rows.ts'
import { joined } from './layout/strip.ts'
import type { PageWords, Word } from './page-words.ts'
import type { SecondReading, Statement } from './statement.ts'
import { answers, type ReadingContext } from './values/answers.ts'

/**
 * What is said, each with what the second reader sees at its place. That two readers who know nothing of each other see
 * the same is the best sign there is that it was read right. What only the second saw, the first is asked of.
 */
export function withSecond<T extends Statement>(
  page: PageWords,
  statements: readonly T[],
  context: ReadingContext,
): T[] {
  const { secondWords } = page
  if (secondWords === null) return [...statements]
  return statements.map((statement) => {
    const isFirsts = page.words.some((word) => touches(word.box, statement.excerpt.box, 0.4))
    const second = secondOpinion(statement, page, isFirsts ? secondWords : page.words, context)
    // The second reader is the weaker one: alone it is believed less.
    return { ...statement, fit: isFirsts ? statement.fit : statement.fit * 0.8, second }
  })
}

function secondOpinion(
  statement: Statement,
  page: PageWords,
  words: readonly Word[],
  context: ReadingContext,
): SecondReading {
  const there = words.filter((word) => touches(word.box, statement.excerpt.box, 0.4))
  if (there.length === 0) return { says: 'nothing' }
  const text = joined(rowsOf(page, there).flatMap(({ phrases }) => phrases.map(({ strip }) => strip))).text
  const { ask, kind, value } = statement
  const values = answers(text, { ask, kind, unit: unitOf(value) }, context).map((found) => found.value)
  const sure = Math.min(...there.map(({ confidence }) => confidence))
  if (values.some((one) => sameValue(one, value))) return { says: 'same', value, sure }
  return values[0] === undefined ? { says: 'nothing' } : { says: 'other', value: values[0] }
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
