import { expandedSteps, printU } from '../../measure/expanded-steps.ts'
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
      ...(comes === 'met' ? [] : expandedSteps(reading, rule.unit)),
      {
        says: `Against what is required: ${rangeInWords(rule)}`,
        ...inequality(comes, value, printU(reading), low, high),
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

/** The inequality that decides, as it holds; an end that the rule leaves open is not written. */
function inequality(
  comes: AgainstRange,
  value: number,
  u: string,
  low: number,
  high: number,
): { readonly formula: string; readonly numbers: string } {
  const x = printSignificant(value, 4)
  const [least, most] = [printSignificant(low, 4), printSignificant(high, 4)]
  switch (comes) {
    case 'under':
      return { formula: 'x + U < least', numbers: `${x} + ${u} < ${least}` }
    case 'over':
      return { formula: 'x − U > most', numbers: `${x} − ${u} > ${most}` }
    case 'met':
      return Number.isFinite(low) && Number.isFinite(high)
        ? { formula: 'least ≤ x ≤ most', numbers: `${least} ≤ ${x} ≤ ${most}` }
        : Number.isFinite(low)
          ? { formula: 'least ≤ x', numbers: `${least} ≤ ${x}` }
          : { formula: 'x ≤ most', numbers: `${x} ≤ ${most}` }
    case 'too-close':
      return value < low
        ? { formula: 'x < least ≤ x + U', numbers: `${x} < ${least} ≤ ${x} + ${u}` }
        : { formula: 'x − U ≤ most < x', numbers: `${x} − ${u} ≤ ${most} < ${x}` }
  }
}
