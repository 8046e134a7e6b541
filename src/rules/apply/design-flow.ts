import { printNumber } from '../../measure/print/number.ts'
import type { Worked } from '../../measure/step.ts'
import { type Cited, citedInWords } from '../citation.ts'
import type { DesignFlow } from '../values/design-flow.ts'

/** Q = base + perBedroom·max(0, bedrooms − covers), never below the minimum. Gallons per day. */
export function flowFromBedrooms(rule: DesignFlow, bedrooms: number): number {
  const extra = Math.max(0, bedrooms - rule.coversBedrooms)
  return Math.max(rule.minimumGpd, rule.baseGpd + rule.perBedroomGpd * extra)
}

export function designFlow(rule: Cited<DesignFlow>, bedrooms: number): Worked<number> {
  const { baseGpd, coversBedrooms, perBedroomGpd, minimumGpd } = rule.value
  const value = flowFromBedrooms(rule.value, bedrooms)
  const least = minimumGpd > 0 ? `, at least ${printNumber(minimumGpd)}` : ''
  return {
    value,
    steps: [
      {
        says: `Design flow from ${bedrooms} bedrooms: ${citedInWords(rule)}`,
        formula: `Q = base + per bedroom · max(0, bedrooms − ${coversBedrooms})${least}`,
        numbers: `${baseGpd} + ${perBedroomGpd} × max(0, ${bedrooms} − ${coversBedrooms})`,
        result: `${printNumber(value)} gpd`,
      },
    ],
  }
}
