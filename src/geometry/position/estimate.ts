import { choleskyOf, type Located, misfit, rowsAt, type Sighting, whitened } from './sightings.ts'

/** The place of one half of the plane that fits best, ft, and how badly it does. */
export type Estimate = {
  readonly x: number
  readonly y: number
  readonly half: 1 | -1
  readonly misfit: number
  /** On the line through the corners, where both halves meet. */
  readonly onLine: boolean
}

/** A mirror image is kept while its misfit lies within this of the best: 99 % of one degree of freedom. */
export const MIRROR_WITHIN = 6.635
/** A place nearer the line than this, ft, is on it. */
const ON_LINE_FT = 1e-3

/** Where a thing is, best first: one place where the half is known or the readings tell, else one in each half. */
export function estimates({ sightings, half }: Located): readonly Estimate[] {
  const found = (half === null ? ([1, -1] as const) : [half]).map((it) => estimateIn(sightings, it))
  const least = Math.min(...found.map(({ misfit: q }) => q))
  return found
    .filter((it) => it.misfit - least < MIRROR_WITHIN)
    .sort((a, b) => a.misfit - b.misfit || b.half - a.half)
}

/**
 * Least misfit over one half of the plane. Descents from the crossings of the first two circles and from every fix;
 * what ends beyond the line, or on it, is held against the best place of the line itself.
 */
export function estimateIn(sightings: readonly Sighting[], half: 1 | -1): Estimate {
  let best: Estimate | null = null
  const offer = (x: number, y: number): void => {
    const onLine = Math.abs(y) < ON_LINE_FT
    const it = { x, y: onLine ? 0 : y, half, misfit: misfit(sightings, x, onLine ? 0 : y), onLine }
    if (best === null || it.misfit < best.misfit) best = it
  }
  const starts = startsOf(sightings, half)
  for (const start of starts) {
    const end = descend(sightings, start)
    if (end.y * half >= ON_LINE_FT) offer(end.x, end.y)
  }
  const settled = best as Estimate | null
  if (settled === null || settled.misfit > 1e-6) {
    for (const { x } of starts) offer(bestOnLine(sightings, x), 0)
  }
  return best!
}

type Start = { readonly x: number; readonly y: number }

/** Where the first two circles cross, or the ends of the line between them where they do not; and every fix. */
function startsOf(sightings: readonly Sighting[], half: 1 | -1): readonly Start[] {
  const fixes = sightings.flatMap((it) =>
    it.kind === 'fix' ? [{ x: it.point.x.value, y: half * Math.abs(it.point.y.value) }] : [],
  )
  const [a, b] = sightings.filter((it) => it.kind === 'tie')
  if (!a || !b) return fixes
  const [dx, dy] = [b.at.x.value - a.at.x.value, b.at.y.value - a.at.y.value]
  const c = Math.hypot(dx, dy)
  if (c === 0) return fixes
  const [ux, uy] = [dx / c, dy / c]
  const along = (a.tie.value ** 2 - b.tie.value ** 2 + c * c) / (2 * c)
  const square = a.tie.value ** 2 - along ** 2
  const off = Math.sqrt(Math.max(square, 0))
  // Circles that miss: on their line, between them or beyond the nearer corner.
  const clipped = Math.max(-a.tie.value, Math.min(a.tie.value, along))
  const at = (t: number, v: number): Start => ({
    x: a.at.x.value + t * ux - v * uy,
    y: a.at.y.value + t * uy + v * ux,
  })
  const both = [at(clipped, off), at(clipped, -off)]
  const inHalf = both.filter(({ y }) => y * half > 0)
  return [...(inHalf.length > 0 ? inHalf : both), ...fixes]
}

const STEPS = 40

/** Damped Gauss–Newton (Levenberg–Marquardt) on the whitened readings. */
function descend(sightings: readonly Sighting[], start: Start): Start {
  let { x, y } = start
  let cost = misfit(sightings, x, y)
  let damping = 1e-4
  for (let step = 0; step < STEPS && cost > 1e-18; step++) {
    const rows = rowsAt(sightings, x, y)
    const lower = choleskyOf(rows)
    const [v, jx, jy] = [
      whitened(
        lower,
        rows.map(({ residual }) => residual),
      ),
      whitened(
        lower,
        rows.map(({ nx }) => nx),
      ),
      whitened(
        lower,
        rows.map(({ ny }) => ny),
      ),
    ]
    const dot = (p: readonly number[], q: readonly number[]): number =>
      p.reduce((sum, it, i) => sum + it * q[i]!, 0)
    const [xx, xy, yy, gx, gy] = [dot(jx, jx), dot(jx, jy), dot(jy, jy), dot(jx, v), dot(jy, v)]
    const [a, b] = [xx * (1 + damping) + 1e-12 * yy, yy * (1 + damping) + 1e-12 * xx]
    const determinant = a * b - xy * xy
    if (!(determinant > 0)) break
    const [dx, dy] = [(b * gx - xy * gy) / determinant, (a * gy - xy * gx) / determinant]
    const next = misfit(sightings, x + dx, y + dy)
    if (next <= cost) {
      const done = Math.hypot(dx, dy) < 1e-9 * (1 + Math.hypot(x, y))
      ;[x, y, damping, cost] = [x + dx, y + dy, damping / 10, next]
      if (done) break
    } else damping *= 10
    if (damping > 1e9) break
  }
  return { x, y }
}

/** Each step doubles or halves, so that so many reach from a millionth of a foot to around the earth and back. */
const LINE_STEPS = 200

/**
 * Least misfit along the line y = 0 about x: a descent by steps that double while they lead down and halve where they do
 * not, as the misfit has one valley near a start.
 */
function bestOnLine(sightings: readonly Sighting[], start: number): number {
  let [x, step] = [start, 1]
  let cost = misfit(sightings, x, 0)
  for (let tried = 0; tried < LINE_STEPS && step > 1e-6; tried++) {
    const [left, right] = [misfit(sightings, x - step, 0), misfit(sightings, x + step, 0)]
    if (Math.min(left, right) < cost) {
      x += left < right ? -step : step
      cost = Math.min(left, right)
      step *= 2
    } else step /= 2
  }
  return x
}
