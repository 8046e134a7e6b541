import { propagate, type Uncertain } from '../../measure/uncertain.ts'
import type { Point } from './point.ts'

/** What bears on where a thing is: a distance taped from a corner whose place is known, or a place read straight off. */
export type Sighting =
  | { readonly kind: 'tie'; readonly corner: string; readonly at: Point; readonly tie: Uncertain }
  | { readonly kind: 'fix'; readonly name: string; readonly point: Point }

/** All that is known of one place: what was sighted, and on which side of the line through the corners (y ≥ 0 or ≤ 0). */
export type Located = { readonly sightings: readonly Sighting[]; readonly half: 1 | -1 | null }

/** One reading held against a place: what it leaves over, its slopes there, and what makes it uncertain. */
export type Row = {
  readonly residual: number
  readonly nx: number
  readonly ny: number
  readonly causes: ReadonlyMap<string, number>
}

/**
 * The readings against the place (x, y). A tie leaves v = tie − distance; an error of its corner moves v by the unit
 * vector n from the corner to the place. All are exact in the place: no slope stands in for an arc.
 */
export const rowsAt = (sightings: readonly Sighting[], x: number, y: number): readonly Row[] =>
  sightings.flatMap((it): readonly Row[] => {
    if (it.kind === 'fix') {
      const { x: px, y: py } = it.point
      return [
        { residual: px.value - x, nx: 1, ny: 0, causes: px.causes },
        { residual: py.value - y, nx: 0, ny: 1, causes: py.causes },
      ]
    }
    const { at, tie } = it
    const [dx, dy] = [x - at.x.value, y - at.y.value]
    const d = Math.hypot(dx, dy)
    const [nx, ny] = d === 0 ? [0, 0] : [dx / d, dy / d]
    const cornerIsExact = at.x.causes.size === 0 && at.y.causes.size === 0
    const causes = cornerIsExact ? tie.causes : propagate(0, [tie, at.x, at.y], [1, nx, ny]).causes
    return [{ residual: tie.value - d, nx, ny, causes }]
  })

/** A millionth of a foot, squared: readings that one cause moves alike have a covariance of no inverse without it. */
const LEAST_VARIANCE = 1e-12

/** Lower triangle L of the readings' covariance, Σ = L·Lᵀ (Cholesky); two readings that share a cause are correlated. */
export function choleskyOf(rows: readonly Row[]): readonly (readonly number[])[] {
  const lower: number[][] = []
  for (const [i, a] of rows.entries()) {
    const line: number[] = []
    for (let j = 0; j <= i; j++) {
      let sum = i === j ? LEAST_VARIANCE : 0
      const other = rows[j]!.causes
      for (const [cause, shift] of a.causes) sum += shift * (other.get(cause) ?? 0)
      for (let k = 0; k < j; k++) sum -= line[k]! * (i === j ? line[k]! : lower[j]![k]!)
      line.push(i === j ? Math.sqrt(Math.max(sum, LEAST_VARIANCE)) : sum / lower[j]![j]!)
    }
    lower.push(line)
  }
  return lower
}

/** L⁻¹·v, by forward substitution. */
export function whitened(lower: readonly (readonly number[])[], v: readonly number[]): readonly number[] {
  const out: number[] = []
  for (const [i, line] of lower.entries()) {
    let sum = v[i]!
    for (let k = 0; k < i; k++) sum -= line[k]! * out[k]!
    out.push(sum / line[i]!)
  }
  return out
}

/**
 * Q(x, y) = vᵀ·Σ⁻¹·v: how badly the readings fit the place, in units of their own uncertainty. At the true place it
 * follows chi-square with as many degrees of freedom as there are readings, wherever the place lies.
 */
export function misfit(sightings: readonly Sighting[], x: number, y: number): number {
  const rows = rowsAt(sightings, x, y)
  return whitened(
    choleskyOf(rows),
    rows.map(({ residual }) => residual),
  ).reduce((sum, v) => sum + v * v, 0)
}

/** How many readings there are: a tie is one, a fix two. */
export const readingsIn = (sightings: readonly Sighting[]): number =>
  sightings.reduce((sum, { kind }) => sum + (kind === 'tie' ? 1 : 2), 0)
