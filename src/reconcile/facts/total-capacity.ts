import { printGal } from '../../measure/print/gallons.ts'
import { exact, plus } from '../../measure/uncertain.ts'
import { partOnRecord } from '../../records/part.ts'
import type { Case } from '../case.ts'
import { type Fact, firstKnown, known, lacking } from '../fact.ts'
import type { Exhibit } from '../outcome.ts'
import { type Capacity, foundCapacity, recordedCapacity } from './capacity.ts'

/** All septic tanks in service together, each as found, or, where the inspection could not measure it, as recorded. */
export function totalTankCapacity({ pairings, findings }: Case): Fact<Capacity> {
  const tanks = pairings.filter(({ built }) => built.kind === 'tank')
  if (tanks.length === 0) return lacking({ gap: 'no-tank' })
  const exhibits: Exhibit[] = []
  const parts: Capacity[] = []
  for (const { built, found } of tanks) {
    const measured =
      found?.outcome === 'found'
        ? foundCapacity(found, findings?.id ?? '', partOnRecord(built))
        : lacking({ gap: 'no-dimensions', part: partOnRecord(built), where: 'inspection' })
    const recorded = recordedCapacity(built)
    const asRecorded: Fact<Capacity> =
      recorded.state === 'known'
        ? known({ gal: exact(recorded.value.gal), steps: [], better: [] }, ...recorded.exhibits)
        : recorded
    const fact = firstKnown<Capacity>(measured, asRecorded)
    if (fact.state !== 'known') return fact
    parts.push(fact.value)
    exhibits.push(...fact.exhibits)
  }
  const total = parts.reduce((sum, part) => ({
    gal: plus(sum.gal, part.gal),
    steps: [...sum.steps, ...part.steps],
    better: [...sum.better, ...part.better],
  }))
  if (parts.length === 1) return known(total, ...exhibits)
  const step = {
    says: 'Tanks in series together',
    formula: 'V = V1 + V2 + …',
    numbers: parts.map(({ gal }) => printGal(gal.value)).join(' + '),
    result: printGal(total.gal.value),
  }
  return known({ ...total, steps: [...total.steps, step] }, ...exhibits)
}
