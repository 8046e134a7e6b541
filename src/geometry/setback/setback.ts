import { compareWithMinimum } from '../../measure/compare.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import type { Point } from '../position/point.ts'
import { outlineToOutline } from './separation.ts'

export type SetbackAnswer = {
  readonly verdict: 'meets' | 'short' | 'too-close-to-call'
  readonly distance: Uncertain
  readonly requiredFt: number
  /** Distance less requirement, ft; negative where it falls short. */
  readonly spareFt: number
  /** Probability that the true distance reaches the requirement, if its error is normal. */
  readonly chanceMeets: number
}

const VERDICTS = {
  suffices: 'meets',
  'falls-short': 'short',
  'too-close-to-call': 'too-close-to-call',
} as const

/** A distance that is known, however it was found (taped straight across, or from two positions), against what is required. */
export function setbackOf(distance: Uncertain, requiredFt: number): Worked<SetbackAnswer> {
  const compared = compareWithMinimum(distance, requiredFt, 'ft')
  const { verdict, difference, chanceSuffices } = compared.value
  return worked(
    { verdict: VERDICTS[verdict], distance, requiredFt, spareFt: difference, chanceMeets: chanceSuffices },
    () => compared.steps,
  )
}

/**
 * Two located things (each a place, a line of two places or an outline of more), the least distance between them, and
 * whether it reaches what is required. The uncertainty is carried through from the ties; what both share counts once.
 */
export function setback(
  from: readonly [Point, ...Point[]],
  to: readonly [Point, ...Point[]],
  requiredFt: number,
): Worked<SetbackAnswer> {
  const distance = outlineToOutline(from, to)
  const answer = setbackOf(distance, requiredFt)
  return worked(answer.value, () => [
    {
      says: 'Least distance between the two',
      formula: from.length === 1 && to.length === 1 ? '√(Δx² + Δy²)' : 'least over corners and sides',
      numbers: `${places(from)} to ${places(to)}`,
      result: `${n(distance.value)} ft`,
    },
    ...answer.steps,
  ])
}

const n = (value: number): string => printSignificant(value, 4)
const places = (list: readonly Point[]): string =>
  list.map(({ x, y }) => `(${n(x.value)}, ${n(y.value)})`).join(' ')
