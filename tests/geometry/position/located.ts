import type { Located, Sighting } from '../../../src/geometry/position/sightings.ts'
import { exact, uncertain } from '../../../src/measure/uncertain.ts'

type Two = { readonly a: number; readonly b: number; readonly c: number }
type How = {
  /** Standard uncertainty of each tie, and of the baseline, ft. */
  readonly u: number
  readonly uc?: number
  readonly half?: 1 | -1 | null
  readonly name?: string
}

/** A place by two ties from the corners of a wall. */
export const tied = ({ a, b, c }: Two, { u, uc = 0, half = 1, name = '' }: How): Located => ({
  half,
  sightings: [
    { kind: 'tie', corner: 'A', at: { x: exact(0), y: exact(0) }, tie: uncertain(a, u, `${name} a`) },
    {
      kind: 'tie',
      corner: 'B',
      at: { x: uncertain(c, uc, 'c'), y: exact(0) },
      tie: uncertain(b, u, `${name} b`),
    },
  ],
})

export const tieFrom = (
  corner: string,
  [x, y]: readonly [number, number],
  ft: number,
  u: number,
): Sighting => ({
  kind: 'tie',
  corner,
  at: { x: exact(x), y: exact(y) },
  tie: uncertain(ft, u, `tie ${corner}`),
})

/** Where two true ties meet on the open side. */
export function placeOf({ a, b, c }: Two): readonly [number, number] {
  const x = (a * a - b * b + c * c) / (2 * c)
  return [x, Math.sqrt(Math.max(0, a * a - x * x))]
}

/**
 * True ties over baselines of 10 to 60 ft and ties to 200 ft: straight out from the wall, to one side, nearly along the
 * wall and on its very line, and the two that first-order ellipses were worst at.
 */
export const GEOMETRIES: readonly Two[] = [
  { c: 12.2, a: 106.2, b: 116.8 },
  { c: 12.2, a: 179.5, b: 191.5 },
  ...[10, 30, 60].flatMap((c) =>
    [25, 195].flatMap((far) =>
      [80, 30, 3, 0].map((deg) => {
        // `far` from corner A, in a direction so many degrees off the wall.
        const [x, y] = [far * Math.cos((deg * Math.PI) / 180), far * Math.sin((deg * Math.PI) / 180)]
        return { c, a: Math.hypot(x, y), b: Math.hypot(x - c, y) }
      }),
    ),
  ),
].filter(({ b }) => b <= 200 && b > 1)
