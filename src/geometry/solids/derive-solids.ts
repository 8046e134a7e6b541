import type { Issue } from '../../measure/issue.ts'
import { type Faults, notNegative, positive, within } from '../../measure/length-faults.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { plus, type Uncertain } from '../../measure/uncertain.ts'
import { ftToInches } from '../../measure/units.ts'
import { type Derivation, READING_NAMES, type SolidsReadings, withScum } from './solids-readings.ts'

/** A derived quantity with its working, or the readings it lacks, by name. */
export type Derived =
  | { readonly known: true; readonly worked: Worked<Uncertain> }
  | { readonly known: false; readonly lacking: readonly string[] }

/** One distance (inches) or share (percent) from an inspection's readings. */
export function deriveSolids(readings: SolidsReadings, derivation: Derivation): Derived {
  const all = withScum(readings)
  const given = derivation.needs.map((need) => all[need])
  const lacking = derivation.needs
    .filter((need) => all[need] === undefined)
    .map((need) => READING_NAMES[need])
  if (lacking.length > 0) return { known: false, lacking }
  const inputs = given as readonly Uncertain[]
  const value = derivation.of(inputs)
  const inches = inputs.map((input) => n(ftToInches(input.value)))
  const numbers =
    derivation.unit === 'in' ? inches.join(' − ') : `(${inches[0]} + ${inches[1]}) ÷ ${inches[2]} × 100`
  const { says, formula, unit } = derivation
  const answer = worked(value, () => [{ says, formula, numbers, result: `${n(value.value)} ${unit}` }])
  return { known: true, worked: answer }
}

/** What can't be right in an inspection's readings of the solids: every fault, with its pointer. */
export function solidsFaults(readings: SolidsReadings): readonly Issue[] {
  const faults: Faults = []
  for (const [key, name] of Object.entries(READING_NAMES) as [keyof SolidsReadings, string][]) {
    const reading = readings[key]
    const bare = name.replace(/^the /, '')
    if (!reading) continue
    if (key === 'liquidDepth') positive(faults, '/liquidDepth', bare, reading)
    else if (key !== 'outletTopAboveLiquid' && key !== 'scumTopAboveLiquid')
      notNegative(faults, `/${key}`, bare, reading)
  }
  const { liquidDepth, sludgeThickness, scumBottomBelowLiquid } = withScum(readings)
  if (!liquidDepth || !sludgeThickness || faults.length > 0) return faults
  const depth = ['liquid depth', liquidDepth] as const
  within(faults, '/sludgeThickness', ['sludge thickness', sludgeThickness], depth)
  if (faults.length === 0 && scumBottomBelowLiquid) {
    const both = plus(sludgeThickness, scumBottomBelowLiquid)
    within(faults, '/scumBottomBelowLiquid', ['sludge and the scum below the liquid together', both], depth)
  }
  return faults
}
