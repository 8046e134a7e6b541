import type { Fields } from '../../catalog/field.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import { measuredLength } from '../../measure/measured-length.ts'
import { expanded, minus } from '../../measure/uncertain.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { isMeasured, type Measured, marked, unmarked, unusualOf } from './unusual.ts'

/** A component as far as it could be read: fields may be at fault, so nothing is taken for granted. */
type Part = { readonly [name: string]: unknown }

/** Lengths and volumes of a component that are not usual for one of its kind. */
export function askAboutPart(
  part: Part | null | undefined,
  fields: Fields,
  fault: (field: string, message: string) => void,
): void {
  for (const [name, field] of Object.entries(fields)) {
    const value = part?.[name]
    const asked = isMeasured(value) ? unusualOf(field, value, part?.kind as ComponentKind | undefined) : null
    if (asked !== null) fault(name, asked)
  }
  const deep = sludgeAboveLiquid(part)
  if (deep !== null) fault('sludgeDepth', deep)
}

/**
 * Sludge lies on the floor and under the liquid: deeper than the liquid stands, by more than both readings are uncertain
 * (k = 2), it was read from elsewhere or written in another unit.
 */
function sludgeAboveLiquid(part: Part | null | undefined): string | null {
  const [sludge, depth, level] = [part?.sludgeDepth, part?.liquidDepth, part?.levelAboveOutlet]
  if (!isMeasured(sludge) || !isMeasured(depth) || unmarked(sludge.asWritten).checked) return null
  const taken = (it: Measured, name: string) => {
    const { ft, method, instrument, halfStepFt } = it as FoundLength
    return measuredLength(ft, method, `instrument: ${instrument}`, name, { halfStepFt })
  }
  const over = minus(taken(sludge, 'sludge'), taken(depth, 'liquid depth'))
  const stands = isMeasured(level) ? Math.max(0, (level as FoundLength).ft) : 0
  if (over.value - stands <= expanded(over)) return null
  return (
    `the sludge, ${sludge.asWritten}, is deeper than the liquid, ${depth.asWritten}: check both. ` +
    `If it is right, write "${marked(sludge.asWritten)}"`
  )
}
