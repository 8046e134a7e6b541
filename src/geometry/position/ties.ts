import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { propagate, standardUncertainty } from '../../measure/uncertain.ts'
import { type CornerTie, type Fit, fitTies } from './fit-ties.ts'
import { covariance, drms, type Point } from './point.ts'

export type TieResidual = {
  readonly corner: string
  /** Tie less the distance to the fitted place, ft: positive where the tape read long. */
  readonly residualFt: number
  /** The residual in units of its own uncertainty; null where nothing checks this tie. */
  readonly standardized: number | null
}

export type Solution = {
  readonly point: Point
  readonly drmsFt: number
  readonly residuals: readonly TieResidual[]
  /** Sum of squared residuals, each over its tie's own uncertainty. */
  readonly chiSquare: number
}

export type TiesFix = {
  readonly best: Solution
  /** Another place that fits as well as can be told (the corners lie on one line, or nearly); null where there is none. */
  readonly mirror: Solution | null
  /** Ties beyond the two that a place needs. */
  readonly redundancy: number
  /**
   * What the residuals say. One spare tie can show a disagreement and never whose it is: all its standardized
   * residuals are equal. With two to spare the largest names the tie.
   */
  readonly disagreement:
    | { readonly kind: 'none' }
    | { readonly kind: 'somewhere'; readonly among: readonly string[] }
    | { readonly kind: 'tie'; readonly corner: string; readonly residualFt: number }
}

export type TiesUnusable = { readonly kind: 'too-few-ties' | 'no-spread'; readonly says: string }

/**
 * A standardized residual beyond this is a disagreement: 99.9 % of a normal law lies within, the critical value of
 * data snooping in geodesy.
 */
export const DISAGREES_BEYOND = 3.29

/** A mirror image is kept while its chi-square lies within this of the best: 99 % of one degree of freedom. */
const MIRROR_WITHIN = 6.635

/**
 * A place from two or more ties by weighted least squares, with what each tie's residual says. The uncertainty goes
 * through the fit to first order by its causes, those of the corners and of shared tapes included.
 */
export function positionFromTies(ties: readonly CornerTie[]): Result<Worked<TiesFix>, TiesUnusable> {
  if (ties.length < 2)
    return err({
      kind: 'too-few-ties',
      says: 'one tie gives a circle: a place needs ties from two corners or more',
    })
  const fits = fitTies(ties)
  const [first, second] = fits
  if (!first)
    return err({
      kind: 'no-spread',
      says: 'the ties run from corners that lie together, or along one line with the place: they can’t fix it',
    })
  const best = solution(first, ties)
  const other = second && second.chiSquare - first.chiSquare < MIRROR_WITHIN ? solution(second, ties) : null
  const redundancy = ties.length - 2
  const fix: TiesFix = {
    best,
    mirror: other,
    redundancy,
    disagreement: disagreement(best.residuals, redundancy),
  }
  return ok(worked(fix, () => working(fix, ties)))
}

/** x̂ moves by K·(δtie + n·δcorner), K the gain of the fit and n the unit vector from corner to place. */
function solution({ x, y, gain, rows, chiSquare }: Fit, ties: readonly CornerTie[]): Solution {
  const inputs = ties.flatMap(({ tie, at }) => [tie, at.x, at.y])
  const slopes = (weights: readonly number[]): number[] =>
    weights.flatMap((k, i) => [k, k * rows[i]!.nx, k * rows[i]!.ny])
  const point = { x: propagate(x, inputs, slopes(gain.x)), y: propagate(y, inputs, slopes(gain.y)) }
  const residuals = ties.map(({ corner }, i): TieResidual => {
    const { nx, ny, residual } = rows[i]!
    // v = (I − J·K)·δ: what of every tie's error is left in this residual.
    const left = ties.map((_, j) => (i === j ? 1 : 0) - nx * gain.x[j]! - ny * gain.y[j]!)
    const u = standardUncertainty(propagate(residual, inputs, slopes(left)))
    const own = standardUncertainty(ties[i]!.tie)
    return { corner, residualFt: residual, standardized: u > 1e-6 * own ? residual / u : null }
  })
  return { point, drmsFt: drms(covariance(point)), residuals, chiSquare }
}

function disagreement(residuals: readonly TieResidual[], redundancy: number): TiesFix['disagreement'] {
  const loud = residuals.filter(({ standardized }) => Math.abs(standardized ?? 0) > DISAGREES_BEYOND)
  if (loud.length === 0) return { kind: 'none' }
  if (redundancy < 2) return { kind: 'somewhere', among: residuals.map(({ corner }) => corner) }
  const worst = loud.reduce((a, b) => (Math.abs(b.standardized!) > Math.abs(a.standardized!) ? b : a))
  return { kind: 'tie', corner: worst.corner, residualFt: worst.residualFt }
}

const n = (value: number): string => printSignificant(value, 4)

function working({ best, mirror, disagreement: d }: TiesFix, ties: readonly CornerTie[]): readonly Step[] {
  const { x, y } = best.point
  const says =
    d.kind === 'none'
      ? 'no tie disagrees'
      : d.kind === 'tie'
        ? `the tie from ${d.corner} disagrees by ${n(d.residualFt)} ft`
        : `one of the ties from ${d.among.join(', ')} disagrees; one tie more would tell which`
  return [
    {
      says: `The place that fits ${ties.length} ties best, each weighed by its own uncertainty`,
      formula: 'least Σ ((tie − distance) / u)²',
      numbers: ties.map(({ corner, tie }) => `${corner} ${n(tie.value)} ft`).join(', '),
      result: `x = ${n(x.value)}, y = ${n(y.value)} ft, DRMS ${n(best.drmsFt)} ft`,
    },
    {
      says: 'What each tie leaves over',
      formula: 'v = tie − distance',
      numbers: best.residuals.map((it) => `${it.corner} ${n(it.residualFt)} ft`).join(', '),
      result: says,
    },
    ...(mirror
      ? [
          {
            says: 'The corners leave a second place that fits as well as can be told',
            formula: 'mirror image in the line of the corners',
            numbers: `Σ (v / u)² = ${n(mirror.chiSquare)} against ${n(best.chiSquare)}`,
            result: `x = ${n(mirror.point.x.value)}, y = ${n(mirror.point.y.value)} ft`,
          },
        ]
      : []),
  ]
}
