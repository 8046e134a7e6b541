import { ok } from '../../base/result.ts'
import type { Material } from '../../catalog/choices.ts'
import { gallonsPerInch, tankCapacity } from '../../geometry/volume/tank-capacity.ts'
import { under } from '../../measure/issue.ts'
import { type Settling, settlingMeasurement } from '../../measure/settling-measurement.ts'
import type { Step } from '../../measure/step.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { type Answer, invalid } from '../refusal.ts'
import { lengthsOf, type MeasuredShape, tankShapeOf } from './measured-shape.ts'
import { readingsOf } from './readings.ts'

export type CapacityAsked = {
  readonly shape: MeasuredShape
  /** For what was taken over the outside; where it was not measured, what is usual for the material. */
  readonly wallThickness: FoundLength | null
  readonly material: Material | null
}

export type CapacityAnswer = {
  readonly gal: Uncertain
  readonly galPerInch: Uncertain
  readonly steps: readonly Step[]
  /** The measurements whose repetition would help, the most useful first. */
  readonly better: readonly Settling[]
}

/** Capacity from floor to outlet invert, with its uncertainty from how each length was taken. */
export function calculateCapacity({ shape, wallThickness, material }: CapacityAsked): Answer<CapacityAnswer> {
  const readings = readingsOf([...lengthsOf(shape), ...(wallThickness ? [wallThickness] : [])])
  const inside = tankShapeOf(shape, readings, { thickness: wallThickness, material })
  const capacity = tankCapacity(inside)
  if (!capacity.ok) return invalid(...under('/shape', capacity.error))
  const perInch = gallonsPerInch(inside)
  if (!perInch.ok) return invalid(...under('/shape', perInch.error))
  const { value: gal, steps } = capacity.value
  return ok({
    gal,
    galPerInch: perInch.value.value,
    steps: [...steps, ...perInch.value.steps],
    better: settlingMeasurement(gal, readings.better()),
  })
}
