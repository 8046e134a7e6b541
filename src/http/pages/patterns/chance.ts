import type { PatternRow } from '../../../operations/patterns/find-patterns.ts'

/** Below one in twenty, chance is taken to be unlikely: common practice, not a rule of any code. */
export const SELDOM = 0.05

export type Reading = 'nothing-to-compare' | 'chance-can' | 'more' | 'fewer'

/** What the counts of a group say, allowing for how many groups were compared. */
export function readingOf({ hits, total, elsewhereHits, elsewhereTotal, adjusted }: PatternRow): Reading {
  if (elsewhereTotal === 0) return 'nothing-to-compare'
  if (adjusted >= SELDOM) return 'chance-can'
  return hits * elsewhereTotal > elsewhereHits * total ? 'more' : 'fewer'
}

/** A probability as two figures that mean something: `0.0012`; below that, `under 0.0001`. */
export function probabilityInFigures(p: number): string {
  if (p < 0.0001) return 'under 0.0001'
  const figures = p.toPrecision(2)
  return Number(figures) >= 1 ? '1' : figures
}

/** The same as how often: `12 times in 10,000`, `54 times in 100`. */
export function howOften(p: number): string {
  if (p < 0.0001) return 'less than once in 10,000 times'
  if (p >= 0.995) return 'nearly always'
  const of = p < 0.0095 ? 10_000 : 100
  const times = Math.round(p * of)
  return `${times === 1 ? 'once' : `${times} times`} in ${of.toLocaleString('en-US')}`
}
