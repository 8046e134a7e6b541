import { printSignificant as n } from './print/number.ts'
import type { Step } from './step.ts'
import { budget, expanded, type Uncertain } from './uncertain.ts'

/** U as it stands in a working: every line that uses it prints the same figure. */
export const printU = (x: Uncertain): string => n(expanded(x))

/** U with the terms it is the sum of, so that no line uses one that stands nowhere; nothing for what is exact. */
export function expandedSteps(x: Uncertain, unit: string): readonly Step[] {
  const shifts = budget(x)
    .map(({ shift }) => Math.abs(shift))
    .filter((shift) => shift > 0)
  if (shifts.length === 0) return []
  return [
    {
      says: 'Expanded uncertainty, k = 2 (about 95 %), from what one standard deviation of each cause moves it by',
      formula: 'U = 2 × √(Σ shift²)',
      numbers: `2 × √(${shifts.map((shift) => `${n(shift)}²`).join(' + ')})`,
      result: `${printU(x)} ${unit}`,
    },
  ]
}

/** The lines of a working that another does not print already. */
export const notIn = (said: readonly Step[], more: readonly Step[]): readonly Step[] =>
  more.filter((it) => !said.some(({ formula, numbers }) => formula === it.formula && numbers === it.numbers))
