import type { Shifts } from '../../measure/extremes.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import { estimateIn } from './estimate.ts'
import type { Located, Sighting } from './sightings.ts'

/** Every cause that a place hangs on, named once. */
export const causesOf = (...located: readonly Located[]): readonly string[] => [
  ...new Set(
    located.flatMap(({ sightings }) =>
      sightings.flatMap(lengthsOf).flatMap(({ causes }) => [...causes.keys()]),
    ),
  ),
]

const lengthsOf = (it: Sighting): readonly Uncertain[] =>
  it.kind === 'fix' ? [it.point.x, it.point.y] : [it.tie, it.at.x, it.at.y]

/** Where a thing would be if its causes were so far off their means: solved again, and not moved along a slope. */
export function placeAt(
  { sightings }: Located,
  half: 1 | -1,
  shifts: Shifts,
): { readonly x: number; readonly y: number } {
  const moved = (it: Uncertain): Uncertain => {
    let { value } = it
    for (const [cause, shift] of it.causes) value += shift * (shifts.get(cause) ?? 0)
    return { value, causes: it.causes }
  }
  const [only, more] = sightings
  if (only?.kind === 'fix' && !more) return { x: moved(only.point.x).value, y: moved(only.point.y).value }
  const crossed = twoCircles(sightings, moved, half)
  if (crossed) return crossed
  const point = ({ x, y }: { readonly x: Uncertain; readonly y: Uncertain }) => ({ x: moved(x), y: moved(y) })
  return estimateIn(
    sightings.map(
      (it): Sighting =>
        it.kind === 'fix'
          ? { ...it, point: point(it.point) }
          : { ...it, tie: moved(it.tie), at: point(it.at) },
    ),
    half,
  )
}

/** Two circles about corners on one line have a closed form; where they miss, the end of the nearer one on the line. */
function twoCircles(
  sightings: readonly Sighting[],
  moved: (it: Uncertain) => Uncertain,
  half: 1 | -1,
): { readonly x: number; readonly y: number } | null {
  const [a, b, more] = sightings
  if (!a || !b || more || a.kind !== 'tie' || b.kind !== 'tie') return null
  const [ay, by] = [moved(a.at.y).value, moved(b.at.y).value]
  const [from, c] = [moved(a.at.x).value, moved(b.at.x).value - moved(a.at.x).value]
  if (ay !== by || c <= 0) return null
  const [ra, rb] = [Math.max(moved(a.tie).value, 0), moved(b.tie).value]
  const along = Math.max(-ra, Math.min(ra, (ra * ra - rb * rb + c * c) / (2 * c)))
  return { x: from + along, y: ay + half * Math.sqrt(Math.max(ra * ra - along * along, 0)) }
}
