import { settlingMeasurement } from '../measure/settling-measurement.ts'
import { expanded, type Uncertain } from '../measure/uncertain.ts'
import type { Better } from './facts/found-length.ts'
import type { Settle } from './outcome.ts'
import { exactly, type Unit } from './quantity.ts'

/** The one measurement whose repetition would take most out of the result's variance; null where none would help. */
export function bestMeasurement(
  { gal, better }: { readonly gal: Uncertain; readonly better: readonly Better[] },
  unit: Unit,
  isSettled: (after: Uncertain) => boolean,
): Settle | null {
  const [best] = settlingMeasurement(gal, better, isSettled)
  if (!best) return null
  return {
    measurement: best.what,
    varianceRemoved: best.varianceRemoved,
    now: exactly(expanded(gal), unit),
    after: exactly(best.expandedUncertaintyAfter, unit),
    settles: best.settles,
  }
}
