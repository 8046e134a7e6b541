import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { over, scale, times, type Uncertain } from '../../measure/uncertain.ts'
import { GAL_PER_CU_FT } from '../../measure/units.ts'

/** How many days of flow a volume holds: days = V ÷ Q, V in gal, Q in gpd. Refused where nothing flows. */
export function daysOfStorage(gal: Uncertain, gpd: Uncertain): Result<Worked<Uncertain>, string> {
  if (!(gpd.value > 0))
    return err('The daily flow must be more than zero to say how many days a volume holds.')
  const days = over(gal, gpd)
  return ok(
    worked(days, () => [
      {
        says: 'Days of flow that the volume holds',
        formula: 'days = V ÷ Q',
        numbers: `${n(gal.value)} gal ÷ ${n(gpd.value)} gpd`,
        result: `${n(days.value, 3)} days`,
      },
    ]),
  )
}

/**
 * Volume between the stones of a gravel-filled excavation, gal: area × depth × void share × 1728/231. The share of
 * voids is a parameter (0 to 1); clean gravel is usually taken at 0.3 to 0.4 (common practice). An open pit has 1.
 */
export function voidVolume(
  sqFt: Uncertain,
  depthFt: Uncertain,
  voidShare: Uncertain,
): Result<Worked<Uncertain>, string> {
  if (!(voidShare.value > 0 && voidShare.value <= 1))
    return err(`The share of voids is ${n(voidShare.value)}: it lies between 0 and 1.`)
  const gal = scale(times(times(sqFt, depthFt), voidShare), GAL_PER_CU_FT)
  return ok(
    worked(gal, () => [
      {
        says: 'Volume between the stones',
        formula: 'V = A × h × voids × 1728 ÷ 231',
        numbers: `${n(sqFt.value)} × ${n(depthFt.value)} × ${n(voidShare.value)} × 1728 ÷ 231`,
        result: `${n(gal.value)} gal`,
      },
    ]),
  )
}
