import { printLength } from '../../measure/print/length.ts'
import type { AsBuiltComponent } from '../../records/as-built.ts'
import { statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'

/** Pipe comes in sizes an inch or more apart; less than half an inch is the same size read twice (common practice). */
const SAME_SIZE_FT = 0.5001 / 12

/** A difference in pipe size, in words; null where there is none or one side does not say. */
export function sizeDiffers(built: AsBuiltComponent, found: FoundComponent): string | null {
  const recorded = statedValue(built.measures.pipeDiameter)
  if (!recorded || !found.pipeDiameter) return null
  if (Math.abs(recorded.ft - found.pipeDiameter.ft) <= SAME_SIZE_FT) return null
  return `the record has ${printLength(recorded.ft)} pipe, the inspection found ${printLength(found.pipeDiameter.ft)}`
}

/** A name of a list as words: `cast-iron` is cast iron. */
export const words = (name: string): string =>
  ['pvc', 'abs'].includes(name) ? name.toUpperCase() : name.replaceAll('-', ' ')
