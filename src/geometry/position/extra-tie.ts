import { invariant } from '../../base/invariant.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { type Covariance, covariance, drms, type Point } from './point.ts'

/** A corner a further tie could run from, in the local frame, ft. */
export type Candidate = { readonly corner: string; readonly x: number; readonly y: number }

export type ExtraTie = {
  readonly corner: string
  /** About what the tape should read, ft. */
  readonly expectedFt: number
  readonly drmsAfterFt: number
  /** Area of the error ellipse after, as a share of the one before: 0.4 is less than half the ground to search. */
  readonly areaShare: number
  /**
   * How many standard uncertainties apart the readings for the two mirror places are; null where there is only one
   * place. Above about 4 the tie also settles the side.
   */
  readonly tellsSides: number | null
}

/**
 * Which further tie would shrink the search most, best first. A tie of standard uncertainty σ along the unit vector n
 * takes from the covariance C the part C·n·nᵀ·C / (σ² + nᵀ·C·n): the update of sequential least squares. Ranked by the
 * area left; where the side is open, a tie that settles it goes before any that does not.
 */
export function tieThatWouldShrinkMost(
  place: Point,
  candidates: readonly Candidate[],
  sigmaFt: number,
  mirror: Point | null = null,
): Worked<readonly ExtraTie[]> {
  invariant(sigmaFt > 0, `a tie has an uncertainty: ${sigmaFt}`)
  const before = covariance(place)
  const ranked = candidates.map((it) => tried(place, before, it, sigmaFt, mirror)).sort(better)
  return worked(ranked, () =>
    ranked.map((it) => ({
      says: `A tie from ${it.corner}`,
      formula: 'C − C·n·nᵀ·C / (σ² + nᵀ·C·n)',
      numbers: `σ = ${n(sigmaFt)} ft, DRMS ${n(drms(before))} ft before`,
      result:
        `DRMS ${n(it.drmsAfterFt)} ft, ${n(it.areaShare * 100)} % of the ground` +
        (it.tellsSides !== null && it.tellsSides > SETTLES ? ', and the side is settled' : ''),
    })),
  )
}

/** Two expanded uncertainties apart: the reading belongs to one side and not to the other. */
const SETTLES = 4

const settles = (it: ExtraTie): boolean => it.tellsSides !== null && it.tellsSides > SETTLES
const better = (a: ExtraTie, b: ExtraTie): number =>
  Number(settles(b)) - Number(settles(a)) || a.areaShare - b.areaShare || (a.corner < b.corner ? -1 : 1)

function tried(place: Point, c: Covariance, it: Candidate, sigma: number, mirror: Point | null): ExtraTie {
  const [dx, dy] = [place.x.value - it.x, place.y.value - it.y]
  const d = Math.hypot(dx, dy)
  const [nx, ny] = d === 0 ? [1, 0] : [dx / d, dy / d]
  const [px, py] = [c.xx * nx + c.xy * ny, c.xy * nx + c.yy * ny]
  const s = sigma * sigma + nx * px + ny * py
  const after = { xx: c.xx - (px * px) / s, xy: c.xy - (px * py) / s, yy: c.yy - (py * py) / s }
  // det(C − ppᵀ/s) = det C · (1 − nᵀp/s): exact even where the determinant itself is lost in rounding.
  const areaShare = Math.sqrt(Math.max(0, 1 - (nx * px + ny * py) / s))
  const tellsSides = mirror ? sidesApart(it, place, mirror, sigma) : null
  return {
    corner: it.corner,
    expectedFt: d,
    drmsAfterFt: Math.sqrt(Math.max(0, after.xx + after.yy)),
    areaShare,
    tellsSides,
  }
}

/** The two readings' difference over the larger standard uncertainty of either, the tie's own included. */
function sidesApart(it: Candidate, place: Point, mirror: Point, sigma: number): number {
  const [here, there] = [reading(it, place), reading(it, mirror)]
  return Math.abs(there.ft - here.ft) / Math.sqrt(sigma * sigma + Math.max(here.variance, there.variance))
}

function reading(it: Candidate, place: Point): { readonly ft: number; readonly variance: number } {
  const [dx, dy] = [place.x.value - it.x, place.y.value - it.y]
  const ft = Math.hypot(dx, dy)
  const [nx, ny] = ft === 0 ? [1, 0] : [dx / ft, dy / ft]
  const { xx, xy, yy } = covariance(place)
  return { ft, variance: nx * nx * xx + 2 * nx * ny * xy + ny * ny * yy }
}

const n = (value: number): string => printSignificant(value, 3)
