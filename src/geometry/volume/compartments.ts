import { err, ok, type Result } from '../../base/result.ts'
import { type Issue, under } from '../../measure/issue.ts'
import { type Faults, positive } from '../../measure/length-faults.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { minus, over, plus, propagate, type Uncertain } from '../../measure/uncertain.ts'
import type { Body } from './body.ts'
import { bodyOf } from './body-of.ts'
import type { TwoCompartments } from './tank-shape.ts'

/**
 * The inside lengths of two compartments, ft, from one length over both, the distance from the inlet end to the near
 * face of the partition, and its thickness: l1 = p, l2 = L − p − t. What the two share stays shared.
 */
export function dividedLength(
  whole: Uncertain,
  toPartition: Uncertain,
  partition: Uncertain,
): Result<readonly [first: Uncertain, second: Uncertain], readonly Issue[]> {
  const faults: Faults = []
  positive(faults, '/whole', 'inside length over both compartments', whole)
  positive(faults, '/toPartition', 'distance to the partition', toPartition)
  positive(faults, '/partition', 'thickness of the partition', partition)
  const second = minus(minus(whole, toPartition), partition)
  if (faults.length === 0 && second.value <= 0)
    faults.push({ pointer: '/toPartition', message: 'The partition stands beyond the far end of the tank.' })
  return faults.length > 0 ? err(faults) : ok([toPartition, second])
}

/** Share of the whole liquid volume that the first compartment holds, 0 to 1: V1 ÷ (V1 + V2). */
export function firstCompartmentShare(shape: TwoCompartments): Result<Worked<Uncertain>, readonly Issue[]> {
  const [first, second] = [bodyOf(shape.first), bodyOf(shape.second)]
  if (!first.ok || !second.ok)
    return err([
      ...(first.ok ? [] : under('/first', first.error)),
      ...(second.ok ? [] : under('/second', second.error)),
    ])
  const [one, two] = [volumeOf(first.value), volumeOf(second.value)]
  const share = over(one, plus(one, two))
  return ok(
    worked(share, () => [
      ...first.value.write().map((step) => ({ ...step, says: `First compartment: ${step.says}` })),
      ...second.value.write().map((step) => ({ ...step, says: `Second compartment: ${step.says}` })),
      {
        says: 'Share of the first compartment',
        formula: 'V1 ÷ (V1 + V2)',
        numbers: `${n(one.value)} ÷ (${n(one.value)} + ${n(two.value)})`,
        result: n(share.value, 4),
      },
    ]),
  )
}

const volumeOf = ({ cuFt, inputs, slopes }: Body): Uncertain => propagate(cuFt, inputs, slopes)
