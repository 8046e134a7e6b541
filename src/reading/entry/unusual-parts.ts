import type { Fields } from '../../catalog/field.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import { measuredLength } from '../../measure/measured-length.ts'
import { expanded, minus } from '../../measure/uncertain.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { unmarked } from './marked.ts'
import { type Asked, askedOf, isMeasured, type Measured, unusualOf } from './unusual.ts'

/** A component as far as it could be read: fields may be at fault, so nothing is taken for granted. */
type Part = { readonly [name: string]: unknown }

type Fault = (field: string, fault: string | Asked) => void

/** Lengths and volumes of a component that are not usual for one of its kind, or reach out of their vessel. */
export function askAboutPart(part: Part | null | undefined, fields: Fields, fault: Fault): void {
  for (const [name, field] of Object.entries(fields)) {
    const value = part?.[name]
    const asked = isMeasured(value) ? unusualOf(field, value, part?.kind as ComponentKind | undefined) : null
    if (asked !== null) fault(name, asked)
  }
  for (const name of Object.keys(IN_THE_LIQUID) as (keyof typeof IN_THE_LIQUID)[]) {
    const deep = belowTheFloor(part, name)
    if (deep !== null) fault(name, deep)
  }
  const high = aboveTheCover(part)
  if (high !== null) fault('outletDeviceAbove', high)
}

/**
 * What lies in the liquid, and what hangs in it, is no deeper than the liquid. `surface`: it is read from the surface, which
 * may stand over the outlet; the others from the outlet's invert.
 */
const IN_THE_LIQUID = {
  sludgeDepth: { says: 'the sludge', from: 'surface' },
  scumThickness: { says: 'the scum', from: 'surface' },
  scumBottomBelow: { says: 'the bottom of the scum', from: 'surface' },
  outletDeviceBelow: { says: 'the bottom of the outlet device', from: 'invert' },
  inletDeviceBelow: { says: 'the bottom of the inlet device', from: 'invert' },
} as const

/** Deeper than the liquid stands, by more than both readings are uncertain (k = 2): read from elsewhere, or in another unit. */
function belowTheFloor(part: Part | null | undefined, name: keyof typeof IN_THE_LIQUID): Asked | null {
  const { says, from } = IN_THE_LIQUID[name]
  const [read, depth, level] = [part?.[name], part?.liquidDepth, part?.levelAboveOutlet]
  if (!isMeasured(read) || !isMeasured(depth) || unmarked(read.asWritten).checked) return null
  const stands = from === 'surface' && isMeasured(level) ? Math.max(0, (level as FoundLength).ft) : 0
  if (!isBeyond(read, depth, stands)) return null
  return askedOf(
    read.asWritten,
    `${says}, ${read.asWritten}, is deeper than the liquid, ${depth.asWritten}: check both.`,
    'it',
  )
}

/** Over the outlet there is the air below the cover, and no more. */
function aboveTheCover(part: Part | null | undefined): Asked | null {
  const [read, air] = [part?.outletDeviceAbove, part?.freeboard]
  if (!isMeasured(read) || !isMeasured(air) || unmarked(read.asWritten).checked) return null
  if (!isBeyond(read, air, 0)) return null
  return askedOf(
    read.asWritten,
    `the top of the outlet device, ${read.asWritten}, is higher than the air over the outlet, ${air.asWritten}: check both.`,
    'it',
  )
}

function isBeyond(read: Measured, limit: Measured, more: number): boolean {
  const taken = (it: Measured, name: string) => {
    const { ft, method, instrument, halfStepFt } = it as FoundLength
    return measuredLength(ft, method, `instrument: ${instrument}`, name, { halfStepFt })
  }
  const over = minus(taken(read, 'read'), taken(limit, 'limit'))
  return over.value - more > expanded(over)
}
