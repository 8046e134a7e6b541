import { expanded, type Uncertain } from '../uncertain.ts'
import { printNumber } from './number.ts'

/** Whole gallons, the trade's way: `1,000 gal`. */
export const printGal = (gal: number): string => `${printNumber(gal)} gal`

/**
 * A value and its expanded uncertainty (k = 2), the uncertainty to two significant digits and the value to the same
 * place (JCGM 100:2008 7.2.6, read where it is quoted): `957.5 ± 1.7 gal`, `958 ± 17 gal`, `1,240 ± 170 gal`. With none: the value alone.
 */
export function printWithU(x: Uncertain, unit: string): string {
  const u = expanded(x)
  if (u === 0) return `${printNumber(x.value, Number.isInteger(x.value) ? 0 : 1)} ${unit}`
  const place = placeOf(u)
  const [value, margin] = [roundTo(x.value, place), roundTo(u, place)]
  const decimals = Math.max(0, -place)
  return `${printNumber(value, decimals)} ± ${printNumber(margin, decimals)} ${unit}`
}

export const printGalWithU = (x: Uncertain): string => printWithU(x, 'gal')

/** The power of ten of the second significant digit; 99.6 rounds to 100, whose second digit is the tens. */
function placeOf(u: number): number {
  const place = Math.floor(Math.log10(u)) - 1
  return roundTo(u, place) >= 10 ** (place + 2) ? place + 1 : place
}

const roundTo = (value: number, place: number): number =>
  place < 0 ? Number(value.toFixed(Math.min(-place, 12))) : Math.round(value / 10 ** place) * 10 ** place
