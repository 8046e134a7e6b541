import { standardUncertainty, type Uncertain } from '../../measure/uncertain.ts'
import type { Point } from './point.ts'
import { inverse } from './solve-2x2.ts'

/** A taped distance, in ft, from a corner whose place in the frame is known. */
export type CornerTie = { readonly corner: string; readonly at: Point; readonly tie: Uncertain }

/** A fitted place, feet, with what the propagation needs: unit vectors from each corner, residuals, and the gain. */
export type Fit = {
  readonly x: number
  readonly y: number
  readonly chiSquare: number
  readonly rows: readonly { readonly nx: number; readonly ny: number; readonly residual: number }[]
  readonly gain: { readonly x: readonly number[]; readonly y: readonly number[] }
}

type Circle = { readonly cx: number; readonly cy: number; readonly r: number; readonly w: number }

/**
 * The least-squares place and, where there is one, the other: only corners on one line (or nearly) leave a choice, and
 * then it lies across that line. Best first. The starts are the crossing of two circles that all the ties like best, and
 * the other crossing of the same two.
 */
export function fitTies(ties: readonly CornerTie[]): readonly Fit[] {
  const us = ties.map(({ tie }) => standardUncertainty(tie))
  // Ties that are all exact weigh alike; an exact one among others weighs as if known to a tenth of the best of them.
  const least = Math.min(...us.filter((u) => u > 0), Number.POSITIVE_INFINITY)
  const circles = ties.map(({ at, tie }, i): Circle => {
    const u = us[i]! > 0 ? us[i]! : Number.isFinite(least) ? least / 10 : 1
    return { cx: at.x.value, cy: at.y.value, r: tie.value, w: 1 / (u * u) }
  })
  const fits: Fit[] = []
  for (const start of bestCrossings(circles)) {
    const fit = descend(start, circles)
    if (fit && !fits.some((it) => Math.hypot(it.x - fit.x, it.y - fit.y) < SAME_FT)) fits.push(fit)
  }
  // Where corners on one line leave two equal places, the one on the open side comes first.
  const equal = (a: Fit, b: Fit): boolean => Math.abs(a.chiSquare - b.chiSquare) < 1e-6
  return fits.sort((a, b) => (equal(a, b) ? b.y - a.y : a.chiSquare - b.chiSquare))
}

/** Two descents that end this near each other, ft, ended at one place. */
const SAME_FT = 1e-4

type Start = { readonly x: number; readonly y: number }

/** The two crossings of those two circles of which one crossing costs least. */
function bestCrossings(circles: readonly Circle[]): readonly Start[] {
  let best: readonly Start[] = []
  let least = Number.POSITIVE_INFINITY
  for (const [i, a] of circles.entries())
    for (const b of circles.slice(i + 1)) {
      const both = crossings(a, b)
      const cost = Math.min(...both.map(({ x, y }) => costAt(x, y, circles)))
      if (cost < least) [best, least] = [both, cost]
    }
  return best
}

/** Circles that miss each other give the middle of the gap, a step to each side; of one center, nothing. */
function crossings(a: Circle, b: Circle): readonly Start[] {
  const d = Math.hypot(b.cx - a.cx, b.cy - a.cy)
  if (d < 1e-9) return []
  const [ux, uy] = [(b.cx - a.cx) / d, (b.cy - a.cy) / d]
  const along = (a.r * a.r - b.r * b.r + d * d) / (2 * d)
  const off = Math.sqrt(Math.max(a.r * a.r - along * along, (0.05 * a.r) ** 2))
  return [off, -off].map((v) => ({ x: a.cx + along * ux - v * uy, y: a.cy + along * uy + v * ux }))
}

const STEPS = 60

/** Damped Gauss–Newton (Levenberg–Marquardt): the damping falls while steps help and rises until one does. */
function descend(start: Start, circles: readonly Circle[]): Fit | null {
  let { x, y } = start
  let damping = 1e-3
  let cost = costAt(x, y, circles)
  for (let step = 0; step < STEPS; step++) {
    let [xx, xy, yy, gx, gy] = [0, 0, 0, 0, 0]
    for (const { cx, cy, r, w } of circles) {
      const d = Math.hypot(x - cx, y - cy) || 1e-12
      const [nx, ny, v] = [(x - cx) / d, (y - cy) / d, r - d]
      xx += w * nx * nx
      xy += w * nx * ny
      yy += w * ny * ny
      gx += w * nx * v
      gy += w * ny * v
    }
    const [a, b] = [xx * (1 + damping) + 1e-12 * yy, yy * (1 + damping) + 1e-12 * xx]
    const determinant = a * b - xy * xy
    const [dx, dy] = [(b * gx - xy * gy) / determinant, (a * gy - xy * gx) / determinant]
    const next = costAt(x + dx, y + dy, circles)
    if (next <= cost) {
      ;[x, y, damping] = [x + dx, y + dy, damping / 10]
      const done = Math.hypot(dx, dy) < 1e-11 * (1 + Math.hypot(x, y))
      cost = next
      if (done) break
    } else damping *= 10
    if (damping > 1e12) break
  }
  return fitAt(x, y, cost, circles)
}

const costAt = (x: number, y: number, circles: readonly Circle[]): number =>
  circles.reduce((sum, { cx, cy, r, w }) => sum + w * (r - Math.hypot(x - cx, y - cy)) ** 2, 0)

/** The gain K = (JᵀWJ)⁻¹JᵀW at the fitted place; none where the sight lines are all one line. */
function fitAt(x: number, y: number, chiSquare: number, circles: readonly Circle[]): Fit | null {
  const rows = circles.map(({ cx, cy, r }) => {
    const d = Math.hypot(x - cx, y - cy) || 1e-12
    return { nx: (x - cx) / d, ny: (y - cy) / d, residual: r - d }
  })
  const normal = { xx: 0, xy: 0, yy: 0 }
  for (const [i, { nx, ny }] of rows.entries()) {
    const { w } = circles[i]!
    normal.xx += w * nx * nx
    normal.xy += w * nx * ny
    normal.yy += w * ny * ny
  }
  const inv = inverse(normal)
  if (!inv) return null
  const gain = { x: [] as number[], y: [] as number[] }
  for (const [i, { nx, ny }] of rows.entries()) {
    const { w } = circles[i]!
    gain.x.push(w * (inv.xx * nx + inv.xy * ny))
    gain.y.push(w * (inv.xy * nx + inv.yy * ny))
  }
  return { x, y, chiSquare, rows, gain }
}
