import { printWithU } from '../measure/print/gallons.ts'
import { printLength, printLengthWithU } from '../measure/print/length.ts'
import { printNumber, printSignificant } from '../measure/print/number.ts'
import { uncertain } from '../measure/uncertain.ts'
import type { Quantity } from '../reconcile/quantity.ts'

/** A figure the trade's way: `898 ± 25 gal`, `61'-1" ± 11"`, `1,250 gal`, `30 min/in`. */
export function figure({ value, unit, U }: Quantity): string {
  const measured = U !== undefined && U > 0
  switch (unit) {
    case 'ft':
      return measured ? printLengthWithU(uncertain(value, U / 2, 'U')) : printLength(value)
    case 'gal':
      return measured ? printWithU(uncertain(value, U / 2, 'U'), unit) : `${printNumber(value)} gal`
    case 'sq ft':
      return measured ? printWithU(uncertain(value, U / 2, 'U'), unit) : `${printSignificant(value, 4)} sq ft`
    case '%':
      return measured ? printWithU(uncertain(value, U / 2, 'U'), '%') : `${printSignificant(value, 3)}%`
    case 'in':
    case 'gpd':
    case 'min/in':
    case 'years':
    case 'days':
      return measured
        ? printWithU(uncertain(value, U / 2, 'U'), unit)
        : `${printSignificant(value, 3)} ${unit}`
  }
}

/** A distance that a rule states, in its own whole feet: `100 ft`. */
export const ruleFeet = ({ value }: Quantity): string => `${printSignificant(value, 4)} ft`
