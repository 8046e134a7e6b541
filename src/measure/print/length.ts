import { expanded, type Uncertain } from '../uncertain.ts'
import { printNumber } from './number.ts'

/** The graduations of a rule or tape, as parts of an inch. */
export type Graduation = 1 | 2 | 4 | 8 | 16 | 32

/**
 * A length in ft the trade's way, to the nearest graduation: `4'-6 1/2"`, `9'-0 1/4"`; under a foot in inches alone:
 * `6 1/2"`, `1/4"`.
 * What is read back differs from `ft` by at most half a graduation.
 */
export function printLength(ft: number, partsOfInch: Graduation = 16): string {
  const parts = Math.round(Math.abs(ft) * 12 * partsOfInch)
  const perFoot = 12 * partsOfInch
  const feet = Math.floor(parts / perFoot)
  const inches = `${inchesOf(parts - feet * perFoot, partsOfInch, feet > 0)}"`
  const sign = ft < 0 && parts > 0 ? '-' : ''
  return `${sign}${feet === 0 ? inches : `${printNumber(feet)}'-${inches}`}`
}

/** After feet the nought is written: 9'-1/4" would read as nine and a quarter. */
function inchesOf(parts: number, partsOfInch: number, afterFeet: boolean): string {
  const whole = Math.floor(parts / partsOfInch)
  let [over, under] = [parts - whole * partsOfInch, partsOfInch]
  if (over === 0) return `${whole}`
  while (over % 2 === 0) [over, under] = [over / 2, under / 2]
  return whole === 0 && !afterFeet ? `${over}/${under}` : `${whole} ${over}/${under}`
}

/**
 * A length and its expanded uncertainty (k = 2), both to the same graduation, fine enough for two digits of the latter
 * and no finer: `61'-1" ± 11"`, `9 1/4" ± 1 1/4"`.
 */
export function printLengthWithU(x: Uncertain): string {
  const inches = expanded(x) * 12
  const graduation = inches >= 4 ? 1 : inches >= 1 ? 4 : 16
  return `${printLength(x.value, graduation)} ± ${printLength(expanded(x), graduation)}`
}

/** Decimal feet to the tenth, as a tape in tenths reads: `106.2 ft`. */
export const printTenths = (ft: number): string => `${printNumber(ft, 1)} ft`

/** Feet and inches to the tenth of an inch: 106.2 ft is `106 ft 2.4 in`. */
export function printFeetInches(ft: number): string {
  const tenths = Math.round(Math.abs(ft) * 120)
  const feet = Math.floor(tenths / 120)
  const inches = printNumber((tenths - feet * 120) / 10, 1)
  const sign = ft < 0 && tenths > 0 ? '-' : ''
  return `${sign}${feet === 0 ? '' : `${printNumber(feet)} ft `}${inches} in`
}
