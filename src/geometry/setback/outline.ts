import type { Vertex } from '../position/polygon.ts'

/** A place, a line or a ring of corners, and how far out from it the thing still reaches, ft. */
export type Outline = {
  readonly ring: readonly [Vertex, ...Vertex[]] | readonly Vertex[]
  readonly grow: number
}

/** Least distance between two outlines, ft; nothing where they touch or one holds the other. */
export function outlineDistance(a: Outline, b: Outline): number {
  const [sa, sb] = [sides(a.ring), sides(b.ring)]
  const touching =
    sa.some((s) => sb.some((t) => cross(s, t))) || holds(b.ring, a.ring[0]!) || holds(a.ring, b.ring[0]!)
  if (touching) return 0
  const least = Math.min(
    ...a.ring.flatMap((corner) => sb.map((side) => toSide(corner, side))),
    ...b.ring.flatMap((corner) => sa.map((side) => toSide(corner, side))),
  )
  return Math.max(0, least - a.grow - b.grow)
}

type Side = readonly [Vertex, Vertex]

/** A line of two corners has one side, a place one of no length. */
const sides = (ring: readonly Vertex[]): readonly Side[] =>
  ring.length <= 2
    ? [[ring[0]!, ring.at(-1)!]]
    : ring.map((from, i): Side => [from, ring[(i + 1) % ring.length]!])

function toSide([px, py]: Vertex, [[ax, ay], [bx, by]]: Side): number {
  const [lx, ly] = [bx - ax, by - ay]
  const squared = lx * lx + ly * ly
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * lx + (py - ay) * ly) / squared))
  return Math.hypot(ax + t * lx - px, ay + t * ly - py)
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
