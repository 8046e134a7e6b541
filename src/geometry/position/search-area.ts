import type { NonEmpty } from '../../base/non-empty.ts'
import { printNumber, printSignificant } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { type Ellipse, errorEllipse } from './ellipse.ts'
import type { Point } from './point.ts'
import { commonPart, polygonArea, type Vertex } from './polygon.ts'

/** Where to look, to be drawn: one shape for each place it may be. Coordinates in the local frame, ft. */
export type SearchArea = {
  /**
   * The chance that the true place lies in the shapes, if it is one of the places given and errors are near normal.
   * With two places and no side stated it holds for each of them: both have to be searched.
   */
  readonly coverage: number
  readonly shapes: NonEmpty<{ readonly ellipse: Ellipse; readonly ring: readonly Vertex[] }>
  /** Ground to search, sq ft, what two shapes share counted once. */
  readonly areaSqFt: number
}

const SIDES = 72
/** Nobody searches a point: the least semi-axis of a shape, ft. A spade is about this wide (common practice). */
const LEAST_FT = 0.5

/** Sides that touch the ellipse rather than cut it, so that the ring never covers less than it says. */
function ringOf({ x, y, semiMajor, semiMinor, angleDeg }: Ellipse): readonly Vertex[] {
  const [cos, sin] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)]
  const outward = 1 / Math.cos(Math.PI / SIDES)
  return Array.from({ length: SIDES }, (_, i): Vertex => {
    const t = (2 * Math.PI * i) / SIDES
    const [u, v] = [outward * semiMajor * Math.cos(t), outward * semiMinor * Math.sin(t)]
    return [x + u * cos - v * sin, y + u * sin + v * cos]
  })
}

/** The places one thing may be (one, or the two that ties without a side leave), as ground to search. */
export function searchArea(places: NonEmpty<Point>, coverage = 0.95): Worked<SearchArea> {
  const shapeOf = (place: Point) => {
    const drawn = errorEllipse(place, coverage)
    const ellipse: Ellipse = {
      ...drawn,
      semiMajor: Math.max(drawn.semiMajor, LEAST_FT),
      semiMinor: Math.max(drawn.semiMinor, LEAST_FT),
    }
    return { ellipse, ring: ringOf(ellipse) }
  }
  const [first, ...rest] = places
  const shapes = [shapeOf(first), ...rest.map(shapeOf)] as const
  const total = shapes.reduce((sum, { ring }) => sum + polygonArea(ring), 0)
  const [a, b] = shapes
  const shared = b ? polygonArea(commonPart(a.ring, b.ring)) : 0
  const area: SearchArea = { coverage, shapes, areaSqFt: total - shared }
  return worked(area, () =>
    shapes.map(({ ellipse }, i) => ({
      says:
        shapes.length > 1 ? `Search area ${i + 1} of ${shapes.length}, both to be searched` : 'Search area',
      formula: 'semi-axes = √(−2·ln(1 − coverage)) · u along each axis',
      numbers: `coverage ${printSignificant(coverage * 100, 3)} %`,
      result:
        `${printNumber(ellipse.semiMajor, 1)} by ${printNumber(ellipse.semiMinor, 1)} ft about ` +
        `x = ${printNumber(ellipse.x, 1)}, y = ${printNumber(ellipse.y, 1)} ft`,
    })),
  )
}
