import { METHODS } from '../../measure/methods.ts'
import type { BetterMeasurement } from '../../measure/settling-measurement.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import {
  type BareReading,
  bareInside,
  bareReading,
  type WallTaken,
} from '../../reconcile/facts/found-length.ts'
import type { FoundLength } from '../../records/quantity.ts'

export type Wall = WallTaken

/**
 * Lengths of one calculation as readings with their uncertainty, and how each could be taken better. The same
 * treatment as in a reconciliation: readings by one instrument share its error.
 */
export function readingsOf(all: readonly FoundLength[]) {
  const better: BetterMeasurement[] = []
  const alone = (taken: FoundLength): boolean =>
    all.filter(({ instrument }) => instrument === taken.instrument).length === 1
  const keep = (of: string, taken: BareReading<string>): Uncertain => {
    better.push(
      ...taken.better.map((it) => {
        const { thing, method, first } = it.what
        const name = thing === 'wallThickness' ? 'wall thickness' : thing
        return {
          ...it,
          what: `measure the ${name} of ${of}${first ? '' : ' again'}: ${METHODS[method].says}`,
        }
      }),
    )
    return taken.length
  }
  return {
    /** A length as it was read. */
    plain: (taken: FoundLength, name: string, of: string): Uncertain =>
      keep(of, bareReading(taken, name, of, alone)),
    /** An inside length: one taken over the outside has its walls taken off. */
    inside: (taken: FoundLength, name: string, of: string, wall: Wall): Uncertain =>
      keep(of, bareInside(taken, wall, name, of, alone)),
    better: (): readonly BetterMeasurement[] => better,
  }
}

export type Readings = ReturnType<typeof readingsOf>
