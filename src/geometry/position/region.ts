import type { NonEmpty } from '../../base/non-empty.ts'
import { chiSquare2Quantile, chiSquareQuantile } from './chi-square.ts'
import { type Estimate, estimates } from './estimate.ts'
import { polygonArea, type Vertex } from './polygon.ts'
import { choleskyOf, type Located, misfit, readingsIn, rowsAt, type Sighting } from './sightings.ts'

/**
 * The ground that holds a place with the stated coverage. Far from two corners that stand close together it is an arc
 * along which only the difference of the ties tells anything, and never an ellipse.
 */
export type Region = {
  /** Its outline, ft in the local frame. */
  readonly ring: readonly Vertex[]
  readonly best: { readonly x: number; readonly y: number }
  readonly form: 'spot' | 'strip' | 'arc'
  /** Along the middle from end to end, and across: of an ellipse of that length and area. */
  readonly lengthFt: number
  readonly widthFt: number
  /** The two ends of the middle line. */
  readonly ends: readonly [Vertex, Vertex]
  readonly areaSqFt: number
  readonly coverage: number
  /** It lies across the line through the corners: its mirror image is part of it. */
  readonly acrossLine: boolean
}

/**
 * How badly a place may fit and still belong to the region. Two readings: Q ≤ χ²(2), whose coverage is exact wherever
 * the place lies, because Q at the true place follows chi-square there. More: Q less its least ≤ χ²(2), the likelihood
 * ratio. Ties that just fail to meet would leave next to nothing of the first, which claims too much: the region then
 * reaches as far as one reading alone at 90 % would.
 */
export function misfitAllowed(sightings: readonly Sighting[], least: number, coverage: number): number {
  const q = chiSquare2Quantile(coverage)
  return readingsIn(sightings) > 2 ? least + q : Math.max(q, least + ONE_READING)
}
const ONE_READING = chiSquareQuantile(0.9, 1)

/** Whether the region holds a place: asked without drawing it. */
export function regionHolds(located: Located, x: number, y: number, coverage = 0.95): boolean {
  if (located.half !== null && y * located.half < 0) return false
  const [best] = estimates(located)
  return misfit(located.sightings, x, y) <= misfitAllowed(located.sightings, best!.misfit, coverage)
}

/** One region, or two where ties without a side leave two; regions that meet on the line of the corners are one. */
export function regionsOf(located: Located, coverage = 0.95): NonEmpty<Region> {
  const places = estimates(located)
  const allowed = misfitAllowed(located.sightings, places[0]!.misfit, coverage)
  const drawn = places.map((it) => ({ it, ring: ringAbout(located.sightings, it, allowed) }))
  const [first, second] = drawn
  const meets = (ring: readonly Vertex[]): boolean => ring.some(([, y]) => y === 0)
  if (located.half === null && meets(first!.ring) && (!second || meets(second.ring))) {
    const other = second ?? { ring: first!.ring.map(([x, y]): Vertex => [x, -y]) }
    return [shaped(joined(first!.ring, other.ring), first!.it, coverage, true)]
  }
  const [one, ...more] = drawn.map(({ it, ring }) => shaped(ring, it, coverage, false))
  return [one!, ...more]
}

const SIDES = 96

type Chart = {
  readonly center: readonly [number, number]
  /** Half axes at one unit of misfit, lower triangle. */
  readonly lower: readonly (readonly number[])[]
  readonly to: (u: number, v: number) => Vertex
  /** How far along a ray the chart goes. */
  readonly edge: (du: number, dv: number) => number
}

type Ray = { readonly vertex: Vertex; readonly onLine: boolean }

/**
 * Rays from the best place, in the readings themselves where two ties give them: the region is an ellipse there, cut
 * where the line of the corners is. It leaves that line at a right angle, so the rays are close together there.
 */
function ringAbout(sightings: readonly Sighting[], best: Estimate, allowed: number): readonly Vertex[] {
  const chart = chartOf(sightings, best)
  const [[l11], [l21, l22]] = chart.lower as [[number], [number, number]]
  const guess = Math.sqrt(Math.max(allowed - best.misfit, 0))
  const ray = (t: number): Ray => {
    const [du, dv] = [l11 * Math.cos(t), l21 * Math.cos(t) + l22 * Math.sin(t)]
    const at = (reach: number): Vertex => chart.to(chart.center[0] + reach * du, chart.center[1] + reach * dv)
    const over = (reach: number): number => misfit(sightings, ...at(reach)) - allowed
    const vertex = at(boundary(over, chart.edge(du, dv), guess))
    return { vertex, onLine: vertex[1] === 0 }
  }
  const step = (2 * Math.PI) / SIDES
  return Array.from(
    { length: SIDES },
    (_, i) => [i * step, ray(i * step), ray((i + 1) * step)] as const,
  ).flatMap(([t, here, next]): readonly Vertex[] => {
    if (here.onLine === next.onLine) return [here.vertex]
    const [off, toward] = here.onLine ? [t + step, -step] : [t, step]
    const corner = lastOff(ray, off, toward)
    const rising = [0, 0.2, 0.4, 0.6, 0.8].map((s) => ray(corner - toward * s * s).vertex)
    const foot: Vertex = [rising[0]![0], 0]
    return [here.vertex, ...(here.onLine ? [foot, ...rising] : [...rising.toReversed(), foot])]
  })
}

/** The last angle whose ray ends off the line, by bisection toward one that ends on it. */
function lastOff(ray: (t: number) => Ray, off: number, toward: number): number {
  let [low, high] = [0, toward]
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2
    if (ray(off + middle).onLine) high = middle
    else low = middle
  }
  return off + low
}

/** Where `over` turns positive along a ray, or the edge: a bracket, then regula falsi with bisection (Illinois). */
function boundary(over: (reach: number) => number, edge: number, guess: number): number {
  let [low, fLow] = [0, over(0)]
  let high = Math.min(guess, edge)
  let fHigh = over(high)
  while (fHigh < -1e-9 && high < edge) {
    ;[low, fLow] = [high, fHigh]
    high = Math.min(high * 1.25 + 1e-9, edge)
    fHigh = over(high)
  }
  if (fHigh <= 1e-9) return high
  for (let i = 0; i < 40 && high - low > 1e-7 * high; i++) {
    const reach = low + ((high - low) * -fLow) / (fHigh - fLow)
    const next = i % 4 === 3 ? (low + high) / 2 : reach
    const f = over(next)
    if (Math.abs(f) < 1e-7) return next
    if (f > 0) [high, fHigh, fLow] = [next, f, fLow / 2]
    else [low, fLow, fHigh] = [next, f, fHigh / 2]
  }
  return low
}

function chartOf(sightings: readonly Sighting[], { x, y, half }: Estimate): Chart {
  const [a, b] = sightings.filter((it) => it.kind === 'tie')
  if (!a || !b) {
    const fix = sightings.filter((it) => it.kind === 'fix').slice(0, 1)
    return {
      center: [x, y],
      lower: choleskyOf(rowsAt(fix, x, y)),
      to: (u, v) => [u, half * v > 0 ? v : 0],
      edge: () => Number.POSITIVE_INFINITY,
    }
  }
  const c = b.at.x.value - a.at.x.value
  const [da, db] = [Math.hypot(x - a.at.x.value, y), Math.hypot(x - b.at.x.value, y)]
  return {
    center: [da, db],
    lower: choleskyOf(rowsAt([a, b], x, y)),
    to: (u, v) => {
      const along = (u * u - v * v + c * c) / (2 * c)
      const square = u * u - along * along
      // The edge of what a triangle allows is the line of the corners.
      return [a.at.x.value + along, square <= 1e-9 * u * u ? 0 : half * Math.sqrt(square)]
    },
    edge: (du, dv) =>
      Math.min(reach(c - (da - db), dv - du), reach(c + (da - db), du - dv), reach(da + db - c, du + dv)),
  }
}

/** How far until room that changes at such a rate is used up. */
const reach = (room: number, rate: number): number =>
  rate >= 0 ? Number.POSITIVE_INFINITY : Math.max(room, 0) / -rate

/** Two halves that meet on the line: the upper's arc one way and the lower's back. */
function joined(one: readonly Vertex[], other: readonly Vertex[]): readonly Vertex[] {
  const arc = (ring: readonly Vertex[]): readonly Vertex[] => {
    const start = ring.findIndex(([, y], i) => y === 0 && ring[(i + 1) % ring.length]![1] !== 0)
    const turned = [...ring.slice(start), ...ring.slice(0, start)]
    const end = turned.findIndex(([, y], i) => i > 0 && y === 0)
    const open = end < 0 ? turned : turned.slice(0, end + 1)
    return open[0]![0] <= open.at(-1)![0] ? open : open.toReversed()
  }
  return [...arc(one), ...arc(other).toReversed()]
}

function shaped(ring: readonly Vertex[], { x, y }: Estimate, coverage: number, acrossLine: boolean): Region {
  const spine = spineOf(ring)
  const ends = [spine[0]!, spine.at(-1)!] as const
  const lengthFt = spine.slice(1).reduce((sum, it, i) => sum + between(spine[i]!, it), 0)
  const areaSqFt = polygonArea(ring)
  const widthFt = lengthFt === 0 ? 0 : (4 * areaSqFt) / (Math.PI * lengthFt)
  const sagitta = Math.max(...spine.map((it) => offChord(it, ends)))
  const form = lengthFt < 1.5 * widthFt ? 'spot' : sagitta > widthFt / 2 ? 'arc' : 'strip'
  return { ring, best: { x, y }, form, lengthFt, widthFt, ends, areaSqFt, coverage, acrossLine }
}

/** The middle line: between the two vertices that lie farthest apart, halfway from one side of the ring to the other. */
function spineOf(ring: readonly Vertex[]): readonly Vertex[] {
  let [from, to, most] = [0, 0, -1]
  for (const [i, p] of ring.entries())
    for (let j = i + 1; j < ring.length; j++) {
      const far = between(p, ring[j]!)
      if (far > most) [from, to, most] = [i, j, far]
    }
  const left = evenly(ring.slice(from, to + 1))
  const right = evenly([...ring.slice(to), ...ring.slice(0, from + 1)]).toReversed()
  return left.map(([x, y], i): Vertex => [(x + right[i]![0]) / 2, (y + right[i]![1]) / 2])
}

const STATIONS = 32

/** A path at even distances along it, from end to end. */
function evenly(path: readonly Vertex[]): readonly Vertex[] {
  const along: number[] = []
  for (const [k, it] of path.entries()) along.push(k === 0 ? 0 : along[k - 1]! + between(path[k - 1]!, it))
  const total = along.at(-1)!
  let i = 0
  return Array.from({ length: STATIONS + 1 }, (_, k): Vertex => {
    const wanted = (total * k) / STATIONS
    while (i < path.length - 2 && along[i + 1]! < wanted) i++
    const [p, q] = [path[i]!, path[Math.min(i + 1, path.length - 1)]!]
    const span = along[Math.min(i + 1, path.length - 1)]! - along[i]!
    const share = span === 0 ? 0 : (wanted - along[i]!) / span
    return [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])]
  })
}

const between = ([ax, ay]: Vertex, [bx, by]: Vertex): number => Math.hypot(bx - ax, by - ay)

function offChord([x, y]: Vertex, [[ax, ay], [bx, by]]: readonly [Vertex, Vertex]): number {
  const far = Math.hypot(bx - ax, by - ay)
  return far === 0 ? 0 : Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / far
}
