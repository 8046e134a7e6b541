import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { minus, propagate, standardUncertainty, type Uncertain, uncertain } from '../../measure/uncertain.ts'
import { M_PER_FT } from '../../measure/units.ts'
import { eastNorth, toFrame } from './frame.ts'
import { axisSigmaM, type GpsFix, turnedStep } from './gps-fix.ts'
import type { Point } from './point.ts'

/** What ties the frame of the corners to the earth: a fix of corner A, and the bearing from A to B. */
export type Anchor = {
  readonly cornerA: GpsFix
  readonly bearingDeg: Uncertain
  readonly steps: readonly Step[]
}

const DEG = 180 / Math.PI
const [A_EAST, A_NORTH] = ['corner A east', 'corner A north']

/** How far one fix lies east and north of another, ft: the errors of both, under the names of both. */
function between(
  from: GpsFix,
  [fromEast, fromNorth]: Names,
  to: GpsFix,
  [toEast, toNorth]: Names,
): EastNorth {
  const { east, north } = eastNorth(from, to)
  const [here, there] = [axisSigmaM(from) / M_PER_FT, axisSigmaM(to) / M_PER_FT]
  return {
    east: minus(uncertain(east, there, toEast), uncertain(0, here, fromEast)),
    north: minus(uncertain(north, there, toNorth), uncertain(0, here, fromNorth)),
  }
}
type Names = readonly [east: string, north: string]
type EastNorth = { readonly east: Uncertain; readonly north: Uncertain }

/**
 * The bearing by a compass, or from the fixes of both corners, θ = atan2(E, N) with ∂θ/∂E = N/r² and ∂θ/∂N = −E/r²: the
 * surer of the two. A phone's fixes of corners 40 ft apart turn the frame by tens of degrees, and a compass by five. Null
 * where neither is there, or the two fixes are of one place.
 */
export function anchorOf(cornerA: GpsFix, cornerB: GpsFix | null, compass: Uncertain | null): Anchor | null {
  const apart = cornerB && between(cornerA, [A_EAST, A_NORTH], cornerB, ['corner B east', 'corner B north'])
  const square = apart ? apart.east.value ** 2 + apart.north.value ** 2 : 0
  const seen =
    apart && square > 0
      ? propagate(
          (Math.atan2(apart.east.value, apart.north.value) * DEG + 360) % 360,
          [apart.east, apart.north],
          [(apart.north.value / square) * DEG, (-apart.east.value / square) * DEG],
        )
      : null
  const surer =
    !compass || (seen && standardUncertainty(seen) < standardUncertainty(compass)) ? seen : compass
  if (!surer) return null
  const step: Step = {
    says:
      surer === seen
        ? 'Bearing from A to B, from the satellite fixes of both'
        : 'Bearing from A to B, by compass',
    formula: surer === seen ? 'θ = atan2(E, N)' : 'θ as read',
    numbers:
      surer === seen ? `E = ${n(apart!.east.value)}, N = ${n(apart!.north.value)}` : `${n(surer.value)}`,
    result: `${n(surer.value)}°`,
  }
  return { cornerA, bearingDeg: surer, steps: [step] }
}

/** A fix in the frame of the corners, ft. The corner's own error moves it as much as its own does. */
export function anchoredPoint(
  fix: GpsFix,
  { cornerA, bearingDeg, steps }: Anchor,
  name: string,
): Worked<Point> {
  const { east, north } = between(cornerA, [A_EAST, A_NORTH], fix, [`${name} east`, `${name} north`])
  const point = toFrame({ cornerA, bearingDeg }, east, north)
  return worked(point, () => [...steps, turnedStep(east.value, north.value, bearingDeg, point)])
}

const n = (value: number): string => {
  const text = printSignificant(value, 6)
  return text.startsWith('-') ? `(−${text.slice(1)})` : text
}
