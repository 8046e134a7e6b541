import { propagate, type Uncertain } from '../../measure/uncertain.ts'
import { principalAxes } from '../position/ellipse.ts'
import { covariance, offset, type Point } from '../position/point.ts'

/** A wall, a line of stakes, the edge of a field: straight, between two places. */
export type Segment = { readonly from: Point; readonly to: Point }

/**
 * Least horizontal distance between two places, ft, with what they share counted once. At one and the same place no
 * direction is singled out, and the widest one is taken.
 */
export function pointToPoint(a: Point, b: Point): Uncertain {
  const d = offset(a, b)
  const [dx, dy] = [d.x.value, d.y.value]
  const far = Math.hypot(dx, dy)
  const { angle } = principalAxes(covariance(d))
  const [nx, ny] = far === 0 ? [Math.cos(angle), Math.sin(angle)] : [dx / far, dy / far]
  return propagate(far, [d.x, d.y], [nx, ny])
}

/**
 * Least distance from a place to a segment, ft. At the foot, a share t of the way along, the ends' errors enter with
 * 1 − t and t; beyond an end it is the distance to that end.
 */
export function pointToSegment(p: Point, { from, to }: Segment): Uncertain {
  const [lx, ly] = [to.x.value - from.x.value, to.y.value - from.y.value]
  const squared = lx * lx + ly * ly
  const along = (p.x.value - from.x.value) * lx + (p.y.value - from.y.value) * ly
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, along / squared))
  const between = (a: Uncertain, b: Uncertain): Uncertain =>
    propagate((1 - t) * a.value + t * b.value, [a, b], [1 - t, t])
  return pointToPoint({ x: between(from.x, to.x), y: between(from.y, to.y) }, p)
}

const nearest = (distances: readonly Uncertain[]): Uncertain =>
  distances.reduce((least, it) => (it.value < least.value ? it : least))

const sides = (corners: readonly Point[]): readonly Segment[] =>
  corners.map((from, i) => ({ from, to: corners[(i + 1) % corners.length]! }))

/**
 * Least distance between two outlines, ft: a tank's four corners against a foundation's, a field's edge against a lot
 * line (an outline of two corners). Outlines that cross or enclose one another are zero apart.
 */
export function outlineToOutline(
  a: readonly [Point, ...Point[]],
  b: readonly [Point, ...Point[]],
): Uncertain {
  const [sa, sb] = [sides(a), sides(b)]
  const least = nearest([
    ...a.flatMap((corner) => sb.map((side) => pointToSegment(corner, side))),
    ...b.flatMap((corner) => sa.map((side) => pointToSegment(corner, side))),
  ])
  const touching = sa.some((s) => sb.some((t) => cross(s, t))) || encloses(b, a[0]) || encloses(a, b[0])
  return touching ? { value: 0, causes: least.causes } : least
}

const turn = (p: Point, q: Point, r: Point): number =>
  (q.x.value - p.x.value) * (r.y.value - p.y.value) - (q.y.value - p.y.value) * (r.x.value - p.x.value)

const cross = (s: Segment, t: Segment): boolean =>
  turn(s.from, s.to, t.from) * turn(s.from, s.to, t.to) < 0 &&
  turn(t.from, t.to, s.from) * turn(t.from, t.to, s.to) < 0

function encloses(outline: readonly Point[], p: Point): boolean {
  let inside = false
  for (const { from, to } of sides(outline)) {
    const [y1, y2] = [from.y.value, to.y.value]
    if (y1 > p.y.value === y2 > p.y.value) continue
    const x = from.x.value + ((p.y.value - y1) / (y2 - y1)) * (to.x.value - from.x.value)
    if (p.x.value < x) inside = !inside
  }
  return inside
}
