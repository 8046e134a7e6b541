import { err, ok, type Result } from '../../base/result.ts'
import { printNumber, printSignificant } from '../../measure/print/number.ts'
import type { Step, Worked } from '../../measure/step.ts'
import type { Cited } from '../citation.ts'
import type { PercTable } from '../values/perc-table.ts'
import type { TextureTable } from '../values/texture-table.ts'
import { applicationRate, isPerc } from './application-rate.ts'
import { type NotStated, notStated } from './not-stated.ts'
import { percRow } from './perc-row.ts'

/** Area by one column of the source; `disagrees` where the source's other column gives another area by more than 1 %. */
export type RequiredArea = {
  readonly sqFt: number
  readonly by: 'area-per-bedroom' | 'application-rate'
  readonly other: { readonly sqFt: number; readonly by: 'area-per-bedroom' | 'application-rate' } | null
  readonly counts: PercTable['counts']
}

export type AbsorptionFacts = {
  readonly minutesPerInch: number | null
  readonly soil: string | null
  readonly bedrooms: number | null
  readonly flowGpd: number | null
  /** A bed takes the table's bed factor; everything else is read as trench. */
  readonly bed: boolean
}

/**
 * Absorption area required, sq ft, of the surface the table counts. A table that prints both columns may contradict
 * itself: area per bedroom answers where bedrooms are known, and what the other column gives stands beside it.
 */
export function requiredAbsorption(
  rule: Cited<PercTable> | Cited<TextureTable>,
  facts: AbsorptionFacts,
): Result<Worked<RequiredArea>, NotStated> {
  const factor = facts.bed && isPerc(rule) ? rule.value.bedFactor : 1
  const steps: Step[] = []
  const areas: { sqFt: number; by: 'area-per-bedroom' | 'application-rate' }[] = []
  let perBedroom: number | null = null
  let rate: number | null = null
  if (isPerc(rule)) {
    if (facts.minutesPerInch === null) return err(notStated('needs-perc-rate', rule.value.table))
    const answer = percRow(rule, facts.minutesPerInch, facts.soil)
    if (!answer.ok) return answer
    perBedroom = answer.value.value.sqFtPerBedroom
    rate = answer.value.value.gpdPerSqFt
    steps.push(...answer.value.steps)
  } else {
    const answer = applicationRate(rule, facts)
    if (!answer.ok) return answer
    rate = answer.value.value
    steps.push(...answer.value.steps)
  }
  const bedFormula = factor === 1 ? '' : ' · bed factor'
  const bedNumbers = factor === 1 ? '' : ` × ${n(factor)}`
  if (perBedroom !== null && facts.bedrooms !== null) {
    const sqFt = perBedroom * facts.bedrooms * factor
    areas.push({ sqFt, by: 'area-per-bedroom' })
    steps.push({
      says: 'Area from the bedroom count',
      formula: `A = area per bedroom · bedrooms${bedFormula}`,
      numbers: `${n(perBedroom)} × ${facts.bedrooms}${bedNumbers}`,
      result: `${printNumber(sqFt, 1)} sq ft`,
    })
  }
  if (rate !== null && facts.flowGpd !== null) {
    const sqFt = (facts.flowGpd / rate) * factor
    areas.push({ sqFt, by: 'application-rate' })
    steps.push({
      says: 'Area from the design flow',
      formula: `A = Q / rate${bedFormula}`,
      numbers: `${n(facts.flowGpd)} / ${n(rate)}${bedNumbers}`,
      result: `${printNumber(sqFt, 1)} sq ft`,
    })
  }
  const [first, second] = areas
  if (!first) return err(notStated(perBedroom !== null ? 'needs-bedrooms' : 'needs-flow', rule.value.table))
  return ok({ value: { ...first, other: second ?? null, counts: rule.value.counts }, steps })
}

const n = (value: number): string => printSignificant(value, 6)
