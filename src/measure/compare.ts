import { invariant } from '../base/invariant.ts'
import { expandedSteps } from './expanded-steps.ts'
import { normalBelow } from './normal.ts'
import { printSignificant } from './print/number.ts'
import { type Step, type Worked, worked } from './step.ts'
import { COVERAGE, expanded, standardUncertainty, type Uncertain } from './uncertain.ts'

/** How a found quantity stands to the one stated on paper. */
export const STATED_VERDICTS = ['agrees', 'smaller', 'larger', 'cannot-tell'] as const
export type StatedVerdict = (typeof STATED_VERDICTS)[number]

export type StatedRule = {
  /** How far a thing of that stated size may truly be from it and still be that thing; absolute, in `unit`. */
  readonly tolerance: number
  /** The largest expanded uncertainty with which "agrees" still means something; absolute, in `unit`. */
  readonly usableUncertainty: number
  readonly unit: string
}

export type StatedComparison = StatedRule & {
  readonly verdict: StatedVerdict
  readonly found: number
  readonly stated: number
  /** d = found − stated. */
  readonly difference: number
  /** U = 2u. */
  readonly expandedUncertainty: number
  /** How far d could move before the verdict changed, for `cannot-tell` how far to a firm difference; never negative. */
  readonly margin: number
  /** `agrees`, though the found value itself lies outside the tolerance: the uncertainty alone reaches back in. */
  readonly onlyThanksToUncertainty: boolean
  /** Probability that the true value lies within the tolerance, if its error is normal. */
  readonly chanceWithinTolerance: number
}

/**
 * Compares a found quantity with a stated one. With d = found − stated, tolerance T and U = 2u:
 *
 *     smaller      d + U < −T
 *     larger       d − U >  T
 *     agrees       neither, and U ≤ usableUncertainty
 *     cannot-tell  neither, and U > usableUncertainty
 *
 * A difference is asserted only when the whole coverage interval lies outside the tolerance: guarded rejection with a
 * guard band of U, which is for "when one wants clear evidence that a limit has been exceeded prior to taking a
 * negative action" (JCGM 106:2012 8.3.3.1, read where it is quoted): the burden is on whoever says that the record is
 * wrong. Agreement needs no guard band but does need a measurement able to see a difference, which
 * `usableUncertainty` demands.
 */
export function compareWithStated(
  found: Uncertain,
  stated: number,
  rule: StatedRule,
): Worked<StatedComparison> {
  const { tolerance, usableUncertainty } = rule
  invariant(tolerance >= 0 && usableUncertainty >= 0, 'a tolerance is not negative')
  const d = found.value - stated
  const U = expanded(found)
  const [toSmaller, toLarger] = [d + U + tolerance, tolerance - (d - U)]
  const slack = rounding(found.value, stated)
  const verdict: StatedVerdict =
    toSmaller < -slack
      ? 'smaller'
      : toLarger < -slack
        ? 'larger'
        : U <= usableUncertainty + slack
          ? 'agrees'
          : 'cannot-tell'
  const margin =
    verdict === 'smaller'
      ? -toSmaller
      : verdict === 'larger'
        ? -toLarger
        : Math.max(0, Math.min(toSmaller, toLarger))
  const comparison: StatedComparison = {
    ...rule,
    verdict,
    found: found.value,
    stated,
    difference: d,
    expandedUncertainty: U,
    margin,
    onlyThanksToUncertainty: verdict === 'agrees' && Math.abs(d) > tolerance + slack,
    chanceWithinTolerance: chanceBetween(-tolerance, tolerance, d, U / COVERAGE),
  }
  return worked(comparison, () => [...expandedSteps(found, rule.unit), ...statedSteps(comparison)])
}

/** How a found quantity stands to the least that a rule requires. */
export const MINIMUM_VERDICTS = ['suffices', 'falls-short', 'too-close-to-call'] as const
export type MinimumVerdict = (typeof MINIMUM_VERDICTS)[number]

export type MinimumComparison = {
  readonly verdict: MinimumVerdict
  readonly found: number
  readonly minimum: number
  /** found − minimum: what is to spare, or with a minus sign what is lacking. */
  readonly difference: number
  readonly expandedUncertainty: number
  /** How far the found value could move before the verdict changed, for `too-close-to-call` to the nearer verdict. */
  readonly margin: number
  /** Probability that the true value reaches the minimum, if its error is normal. */
  readonly chanceSuffices: number
  readonly unit: string
}

/**
 * Compares a found quantity with a required minimum: `suffices` when found − U ≥ minimum, `falls-short` when
 * found + U < minimum, and otherwise `too-close-to-call`. Both answers carry a guard band of U (JCGM 106:2012 8.3,
 * from memory),
 * so neither the owner nor the authority is given the benefit of the measurement's doubt.
 */
export function compareWithMinimum(
  found: Uncertain,
  minimum: number,
  unit: string,
): Worked<MinimumComparison> {
  const U = expanded(found)
  const d = found.value - minimum
  const slack = rounding(found.value, minimum)
  const verdict: MinimumVerdict =
    d - U >= -slack ? 'suffices' : d + U < -slack ? 'falls-short' : 'too-close-to-call'
  const margin = Math.min(Math.abs(d - U), Math.abs(d + U))
  const chanceSuffices = chanceBetween(0, Number.POSITIVE_INFINITY, d, standardUncertainty(found))
  const comparison: MinimumComparison = {
    verdict,
    found: found.value,
    minimum,
    difference: d,
    expandedUncertainty: U,
    margin,
    chanceSuffices,
    unit,
  }
  return worked(comparison, () => [...expandedSteps(found, unit), ...minimumSteps(comparison)])
}

/** What floating point may have lost on the way: a limit met to twelve digits is met, whatever the thirteenth says. */
const rounding = (a: number, b: number): number => 1e-12 * Math.max(Math.abs(a), Math.abs(b), 1)

/** P(low ≤ x ≤ high) for x normal about `mean`; with no uncertainty, 1 or 0. */
function chanceBetween(low: number, high: number, mean: number, u: number): number {
  if (u === 0) return mean >= low && mean <= high ? 1 : 0
  return normalBelow((high - mean) / u) - normalBelow((low - mean) / u)
}

const n = printSignificant

function statedSteps(c: StatedComparison): readonly Step[] {
  const { unit } = c
  const test = {
    smaller: ['d + U < −T', `${n(c.difference)} + ${n(c.expandedUncertainty)} < −${n(c.tolerance)}`],
    larger: ['d − U > T', `${n(c.difference)} − ${n(c.expandedUncertainty)} > ${n(c.tolerance)}`],
    agrees: ['U ≤ usable', `${n(c.expandedUncertainty)} ≤ ${n(c.usableUncertainty)}`],
    'cannot-tell': ['U > usable', `${n(c.expandedUncertainty)} > ${n(c.usableUncertainty)}`],
  }[c.verdict] as [string, string]
  return [
    {
      says: 'Difference from what is stated',
      formula: 'd = found − stated',
      numbers: `${n(c.found)} ${unit} − ${n(c.stated)} ${unit}`,
      result: `${n(c.difference)} ${unit}`,
    },
    {
      says: `Verdict, with tolerance T = ${n(c.tolerance)} ${unit} and U = ${n(c.expandedUncertainty)} ${unit} (k = 2)`,
      formula: test[0],
      numbers: test[1],
      result: c.verdict,
    },
  ]
}

function minimumSteps(c: MinimumComparison): readonly Step[] {
  const [found, U, minimum] = [n(c.found), n(c.expandedUncertainty), n(c.minimum)]
  const test = {
    suffices: ['found − U ≥ minimum', `${found} − ${U} ≥ ${minimum}`],
    'falls-short': ['found + U < minimum', `${found} + ${U} < ${minimum}`],
    'too-close-to-call': [
      'found − U < minimum ≤ found + U',
      `${found} − ${U} < ${minimum} ≤ ${found} + ${U}`,
    ],
  }[c.verdict] as [string, string]
  return [
    { says: `Against the minimum, ${c.unit} (k = 2)`, formula: test[0], numbers: test[1], result: c.verdict },
  ]
}
