import { invariant } from '../../base/invariant.ts'
import { compareWithMinimum, type MinimumComparison } from '../../measure/compare.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { minus, over, scale, type Uncertain } from '../../measure/uncertain.ts'

/** Area that a daily flow needs at an application rate: A = Q ÷ rate × factor (a bed's factor, say; 1 where none). */
export function areaForFlow(gpd: Uncertain, gpdPerSqFt: Uncertain, factor = 1): Worked<Uncertain> {
  invariant(gpdPerSqFt.value > 0 && factor > 0, 'an application rate is above zero')
  const sqFt = scale(over(gpd, gpdPerSqFt), factor)
  return worked(sqFt, () => [
    {
      says: 'Area required by the flow',
      formula: `A = Q ÷ rate${factor === 1 ? '' : ' × factor'}`,
      numbers: `${n(gpd.value)} ÷ ${n(gpdPerSqFt.value)}${factor === 1 ? '' : ` × ${n(factor)}`}`,
      result: `${n(sqFt.value)} sq ft`,
    },
  ])
}

/** Area that a bedroom count needs: A = bedrooms × area per bedroom × factor. */
export function areaForBedrooms(bedrooms: number, sqFtPerBedroom: number, factor = 1): Worked<number> {
  const sqFt = bedrooms * sqFtPerBedroom * factor
  return worked(sqFt, () => [
    {
      says: 'Area required by the bedrooms',
      formula: `A = bedrooms × area per bedroom${factor === 1 ? '' : ' × factor'}`,
      numbers: `${bedrooms} × ${n(sqFtPerBedroom)}${factor === 1 ? '' : ` × ${n(factor)}`}`,
      result: `${n(sqFt)} sq ft`,
    },
  ])
}

/** Length of trench that an area needs when each foot of it provides so many sq ft: L = A ÷ a. */
export function lengthForArea(sqFt: Uncertain, sqFtPerFt: Uncertain): Worked<Uncertain> {
  invariant(sqFtPerFt.value > 0, 'a foot of trench provides more than no area')
  const ft = over(sqFt, sqFtPerFt)
  return worked(ft, () => [
    {
      says: 'Length required, each foot providing a',
      formula: 'L = A ÷ a',
      numbers: `${n(sqFt.value)} ÷ ${n(sqFtPerFt.value)}`,
      result: `${n(ft.value)} ft`,
    },
  ])
}

/**
 * Provided area against required, both with their uncertainty: whether provided − required is at least zero, a cause
 * in both (one percolation test, one tape) counted once with its signs.
 */
export function providedAgainstRequired(provided: Uncertain, required: Uncertain): Worked<MinimumComparison> {
  const spare = compareWithMinimum(minus(provided, required), 0, 'sq ft')
  return worked(spare.value, () => [
    {
      says: 'Area to spare',
      formula: 'provided − required',
      numbers: `${n(provided.value)} sq ft − ${n(required.value)} sq ft`,
      result: `${n(provided.value - required.value)} sq ft`,
    },
    ...spare.steps,
  ])
}

/** The same field against what was required at its permit and what is required today: two answers, never one. */
export const atPermitAndToday = (
  provided: Uncertain,
  required: { readonly atPermit: Uncertain; readonly today: Uncertain },
): { readonly atPermit: Worked<MinimumComparison>; readonly today: Worked<MinimumComparison> } => ({
  atPermit: providedAgainstRequired(provided, required.atPermit),
  today: providedAgainstRequired(provided, required.today),
})
