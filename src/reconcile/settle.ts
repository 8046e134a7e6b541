import { printSignificant } from '../measure/print/number.ts'
import { type BetterMeasurement, settlingMeasurement } from '../measure/settling-measurement.ts'
import { expanded, type Uncertain } from '../measure/uncertain.ts'
import type { Settle } from './outcome.ts'

/** The one measurement whose repetition would take most out of the result's variance; null where none would help. */
export function bestMeasurement(
  { gal, better }: { readonly gal: Uncertain; readonly better: readonly BetterMeasurement[] },
  unit: string,
  isSettled: (after: Uncertain) => boolean,
): Settle | null {
  const [best] = settlingMeasurement(gal, better, isSettled)
  if (!best) return null
  const [now, after] = [
    printSignificant(expanded(gal), 2),
    printSignificant(best.expandedUncertaintyAfter, 2),
  ]
  const share = printSignificant(100 * best.varianceRemoved, 2)
  return {
    what: best.what,
    why: `it carries ${share} % of the variance: U falls from ${now} to ${after} ${unit}${best.settles ? ', enough to decide' : ', not enough by itself'}`,
    expandedUncertaintyAfter: best.expandedUncertaintyAfter,
    unit,
    settles: best.settles,
  }
}
