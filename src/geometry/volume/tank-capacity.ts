import { ok, type Result } from '../../base/result.ts'
import { expandedSteps } from '../../measure/expanded-steps.ts'
import type { Issue } from '../../measure/issue.ts'
import { printGal, printGalWithU } from '../../measure/print/gallons.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { propagateNumerically } from '../../measure/propagate-numerically.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { budget, propagate, standardUncertainty, type Uncertain } from '../../measure/uncertain.ts'
import { GAL_PER_CU_FT, IN_PER_FT, TRADE_GAL_PER_CU_FT } from '../../measure/units.ts'
import type { Body } from './body.ts'
import { bodyOf } from './body-of.ts'
import type { TankShape } from './tank-shape.ts'

/**
 * Capacity of a tank in US gal, floor to outlet invert, with its uncertainty by first-order propagation
 * (JCGM 100:2008 5.1.2) and the working. Bad dimensions come back as issues, all of them, each with a pointer into the
 * shape. A section filled to within its uncertainty of the crown is only roughly linear there: its u is then a little
 * low.
 */
export function tankCapacity(shape: TankShape): Result<Worked<Uncertain>, readonly Issue[]> {
  const measured = bodyOf(shape)
  if (!measured.ok) return measured
  const body = measured.value
  const gal = propagate(
    body.cuFt * GAL_PER_CU_FT,
    body.inputs,
    body.slopes.map((slope) => slope * GAL_PER_CU_FT),
  )
  return ok(worked(gal, () => [...body.write(), ...gallonSteps(body, gal)]))
}

/**
 * Gallons for each inch at the liquid line, with uncertainty: the area of the surface × 231ths. What an inch of
 * drawdown holds, and what one inch of wrong depth is worth.
 */
export function gallonsPerInch(shape: TankShape): Result<Worked<Uncertain>, readonly Issue[]> {
  const measured = bodyOf(shape)
  if (!measured.ok) return measured
  const { inputs, surfaceAt } = measured.value
  const perInch = propagateNumerically((values) => (surfaceAt(values) * GAL_PER_CU_FT) / IN_PER_FT, inputs)
  const surface = surfaceAt(inputs.map((input) => input.value))
  return ok(
    worked(perInch, () => [
      {
        says: 'Gallons per inch at the liquid line, from the area of the surface',
        formula: 'gal per in = S × 1728 ÷ 231 ÷ 12',
        numbers: `${n(surface)} sq ft × 1728 ÷ 231 ÷ 12`,
        result: `${n(perInch.value)} gal`,
      },
    ]),
  )
}

function gallonSteps(body: Body, gal: Uncertain): readonly Step[] {
  const steps: Step[] = [
    {
      says: 'In US gallons, 231 cu in each',
      formula: 'gal = V × 1728 ÷ 231',
      numbers: `${n(body.cuFt)} cu ft × 1728 ÷ 231`,
      result: `${n(gal.value)} gal`,
    },
    {
      says: 'Check value with the trade’s round 7.5 gal per cu ft (common practice, 0.26 % high; not used)',
      formula: 'V × 7.5',
      numbers: `${n(body.cuFt)} cu ft × 7.5`,
      result: printGal(body.cuFt * TRADE_GAL_PER_CU_FT),
    },
  ]
  if (gal.causes.size === 0) return steps
  const shares = budget(gal)
  const variance = standardUncertainty(gal) ** 2
  return [
    ...steps,
    ...shares.map(({ cause, shift, share }) => ({
      says: `What one standard deviation of "${cause}" moves it`,
      formula: 'share = shift² ÷ Σ shift² × 100',
      numbers: `${n(Math.abs(shift))}² ÷ ${n(variance)} × 100`,
      result: `${n(share * 100, 2)} % of the variance: ${n(shift)} gal`,
    })),
    ...expandedSteps(gal, 'gal').map((step) => ({
      ...step,
      result: `${step.result}: ${printGalWithU(gal)}`,
    })),
  ]
}
