import type { AsBuiltComponent } from '../../records/as-built.ts'
import { statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { exactly, type Quantity } from '../quantity.ts'

/** Pipe comes in sizes an inch or more apart; less than half an inch is the same size read twice (common practice). */
export const SAME_SIZE_FT = 0.5001 / 12

/** A difference in pipe size; null where there is none or one side does not say. */
export function sizeDiffers(
  built: AsBuiltComponent,
  found: FoundComponent,
): { readonly recorded: Quantity; readonly found: Quantity } | null {
  const recorded = statedValue(built.measures.pipeDiameter)
  if (!recorded || !found.pipeDiameter) return null
  if (Math.abs(recorded.ft - found.pipeDiameter.ft) <= SAME_SIZE_FT) return null
  return { recorded: exactly(recorded.ft, 'ft'), found: exactly(found.pipeDiameter.ft, 'ft') }
}
