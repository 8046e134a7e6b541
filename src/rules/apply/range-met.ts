import { printSignificant } from '../../measure/print/number.ts'
import type { Worked } from '../../measure/step.ts'
import { expanded, type Uncertain } from '../../measure/uncertain.ts'
import { highEnd, lowEnd, type Range, rangeInWords } from '../values/quantity.ts'

/** How a reading stands to the band that a rule requires. */
export type AgainstRange = 'met' | 'under' | 'over' | 'too-close'

/**
 * A reading against a band, in the band's unit: under or over it only where the whole coverage interval lies outside
 * (U = 2u), as for every negative answer; met where the reading itself lies inside.
 */
export function rangeMet(reading: Uncertain, rule: Range<string>): Worked<AgainstRange> {
  const U = expanded(reading)
  const [low, high] = [lowEnd(rule), highEnd(rule)]
  const { value } = reading
  const comes: AgainstRange =
    value + U < low - SLACK
      ? 'under'
      : value - U > high + SLACK
        ? 'over'
        : value >= low - SLACK && value <= high + SLACK
          ? 'met'
          : 'too-close'
  return {
    value: comes,
    steps: [
      {
        says: `Against what is required: ${rangeInWords(rule)}`,
        formula: 'outside only where x ± U lies outside',
        numbers: `${printSignificant(value, 3)} ± ${printSignificant(U, 2)} ${rule.unit}`,
        result: SAYS[comes],
      },
    ],
  }
}

/** Sums of inches and feet are exact to no more than this. */
const SLACK = 1e-6

const SAYS: { readonly [A in AgainstRange]: string } = {
  met: 'within it',
  under: 'less than required',
  over: 'more than allowed',
  'too-close': 'too close to call',
}
