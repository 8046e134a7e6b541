import type { BetterMeasurement } from '../../measure/settling-measurement.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import { insideReading, type Reading, reading, type Taking } from '../../reconcile/facts/found-length.ts'
import type { Material } from '../../records/component.ts'
import type { FoundLength } from '../../records/quantity.ts'

/**
 * Lengths of one calculation as readings with their uncertainty, and how each could be taken better. The same
 * treatment as in a reconciliation: readings by one instrument share its error.
 */
export function readingsOf(all: readonly FoundLength[]) {
  const better: BetterMeasurement[] = []
  const alone = (taken: FoundLength): boolean =>
    all.filter(({ instrument }) => instrument === taken.instrument).length === 1
  const taking = (of: string): Taking => ({ of, findings: 'the request', alone })
  const keep = (taken: Reading): Uncertain => {
    better.push(...taken.better)
    return taken.length
  }
  return {
    /** A length as it was read. */
    plain: (taken: FoundLength, name: string, of: string): Uncertain =>
      keep(reading(taken, name, taking(of))),
    /** An inside length: one taken over the outside has its walls taken off. */
    inside: (taken: FoundLength, name: string, of: string, wall: Wall): Uncertain =>
      keep(insideReading(taken, wall, name, taking(of))),
    better: (): readonly BetterMeasurement[] => better,
  }
}

export type Wall = { readonly thickness: FoundLength | null; readonly material: Material | null }
export type Readings = ReturnType<typeof readingsOf>
