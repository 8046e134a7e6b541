import type { Vertex } from '../position/polygon.ts'

/** A place, a line or a ring of corners, and how far out from it the thing still reaches, ft. */
export type Outline = {
  readonly ring: readonly [Vertex, ...Vertex[]] | readonly Vertex[]
  readonly grow: number
}

/** The two points at which two outlines come nearest, and how far apart they are, ft. */
export type Gap = { readonly from: Vertex; readonly to: Vertex; readonly ft: number }

/** Nearest points of two outlines before what they reach beyond them; where they touch, one point twice. */
export function nearestPoints(a: Outline, b: Outline): Gap {
  const [sa, sb] = [sides(a.ring), sides(b.ring)]
  const touching =
    sa.some((s) => sb.some((t) => cross(s, t))) || holds(b.ring, a.ring[0]!) || holds(a.ring, b.ring[0]!)
  const gaps = [
    ...a.ring.flatMap((corner) => sb.map((side) => gapTo(corner, foot(corner, side)))),
    ...b.ring.flatMap((corner) => sa.map((side) => gapTo(foot(corner, side), corner))),
  ]
  const least = gaps.reduce((best, it) => (it.ft < best.ft ? it : best))
  return touching ? { from: least.from, to: least.from, ft: 0 } : least
}

/** Least distance between two outlines, ft; nothing where they touch or one holds the other. */
export const outlineDistance = (a: Outline, b: Outline): number =>
  Math.max(0, nearestPoints(a, b).ft - a.grow - b.grow)

const gapTo = (from: Vertex, to: Vertex): Gap => ({
  from,
  to,
  ft: Math.hypot(to[0] - from[0], to[1] - from[1]),
})

type Side = readonly [Vertex, Vertex]

/** A line of two corners has one side, a place one of no length. */
const sides = (ring: readonly Vertex[]): readonly Side[] =>
  ring.length <= 2
    ? [[ring[0]!, ring.at(-1)!]]
    : ring.map((from, i): Side => [from, ring[(i + 1) % ring.length]!])

function foot([px, py]: Vertex, [[ax, ay], [bx, by]]: Side): Vertex {
  const [lx, ly] = [bx - ax, by - ay]
  const squared = lx * lx + ly * ly
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * lx + (py - ay) * ly) / squared))
  return [ax + t * lx, ay + t * ly]
}

const turn = ([px, py]: Vertex, [qx, qy]: Vertex, [rx, ry]: Vertex): number =>
  (qx - px) * (ry - py) - (qy - py) * (rx - px)

const cross = ([p, q]: Side, [r, s]: Side): boolean =>
  turn(p, q, r) * turn(p, q, s) < 0 && turn(r, s, p) * turn(r, s, q) < 0

function holds(ring: readonly Vertex[], [x, y]: Vertex): boolean {
  if (ring.length < 3) return false
  let inside = false
  for (const [[ax, ay], [bx, by]] of sides(ring)) {
    if (ay > y === by > y) continue
    if (x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  }
  return inside
}
