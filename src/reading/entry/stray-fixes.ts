import { eastNorth, type Geodetic } from '../../geometry/position/frame.ts'
import { printNumber } from '../../measure/print/number.ts'

/** Nothing of a system lies farther from its house. */
const MOST_MILES = 1

/** A fix of a part that lies miles from that of the corner: a digit of one of them is wrong, and which nobody can tell. */
export const strayFixes = (
  components: readonly ({ readonly fix?: unknown } | undefined)[],
  cornerA: unknown,
): readonly { readonly path: readonly ['components', number, 'fix']; readonly message: string }[] => {
  const corner = placeIn(cornerA)
  if (!corner) return []
  return components.flatMap((it, index) => {
    const place = placeIn(it?.fix)
    if (!place) return []
    const { east, north } = eastNorth(corner, place)
    const miles = Math.hypot(east, north) / 5280
    return miles <= MOST_MILES
      ? []
      : [
          {
            path: ['components', index, 'fix'] as const,
            message: `lies ${printNumber(Math.round(miles))} miles from corner A: check the latitude and longitude of both`,
          },
        ]
  })
}

/** Whatever was typed, as far as it is a place that a plane can touch. */
function placeIn(typed: unknown): Geodetic | null {
  if (typeof typed !== 'object' || typed === null) return null
  const { lat, lon } = typed as { readonly lat?: unknown; readonly lon?: unknown }
  const [latDeg, lonDeg] = [lat, lon].map((it) =>
    Number(typeof it === 'string' ? it.trim() || Number.NaN : it),
  )
  return Math.abs(latDeg!) <= 89 && Math.abs(lonDeg!) <= 180 ? { latDeg: latDeg!, lonDeg: lonDeg! } : null
}
