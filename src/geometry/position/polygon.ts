export type Vertex = readonly [x: number, y: number]

/** Area by the shoelace formula, positive whichever way round it runs. */
export function polygonArea(ring: readonly Vertex[]): number {
  let twice = 0
  for (const [i, [x, y]] of ring.entries()) {
    const [nx, ny] = ring[(i + 1) % ring.length]!
    twice += x * ny - nx * y
  }
  return Math.abs(twice) / 2
}

/** What two convex rings, both running from x toward y, have in common (Sutherland–Hodgman); empty where they are apart. */
export function commonPart(a: readonly Vertex[], b: readonly Vertex[]): readonly Vertex[] {
  let rest: readonly Vertex[] = a
  for (const [i, p] of b.entries()) {
    const q = b[(i + 1) % b.length]!
    const side = ([x, y]: Vertex): number => (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0])
    const kept: Vertex[] = []
    for (const [j, from] of rest.entries()) {
      const to = rest[(j + 1) % rest.length]!
      const [s, t] = [side(from), side(to)]
      if (s >= 0) kept.push(from)
      if (s >= 0 !== t >= 0) {
        const share = s / (s - t)
        kept.push([from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])])
      }
    }
    rest = kept
  }
  return rest
}
