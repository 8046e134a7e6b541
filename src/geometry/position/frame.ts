import { invariant } from '../../base/invariant.ts'
import { propagate, type Uncertain } from '../../measure/uncertain.ts'
import { M_PER_FT } from '../../measure/units.ts'
import type { Point } from './point.ts'

/** Degrees, WGS 84. */
export type Geodetic = { readonly latDeg: number; readonly lonDeg: number }

const RAD = Math.PI / 180
/** WGS 84 (NGA.STND.0036): semi-major axis in m, and the first eccentricity squared, f(2 − f) with f = 1/298.257223563. */
const A = 6_378_137
const F = 1 / 298.257223563
const E2 = F * (2 - F)

/**
 * East and north of `origin`, ft, on the plane that touches the ellipsoid there: the radii of curvature N (prime
 * vertical) and M (meridian) at the origin. Over a parcel (1,000 ft) it is good to under a hundredth of a foot.
 */
export function eastNorth(
  origin: Geodetic,
  { latDeg, lonDeg }: Geodetic,
): { readonly east: number; readonly north: number } {
  invariant(Math.abs(origin.latDeg) < 89.9 && Math.abs(latDeg) <= 90, `latitude: ${origin.latDeg}, ${latDeg}`)
  const sin = Math.sin(origin.latDeg * RAD)
  const w = Math.sqrt(1 - E2 * sin * sin)
  const primeVertical = A / w
  const meridian = (A * (1 - E2)) / w ** 3
  const dLon = ((((lonDeg - origin.lonDeg) % 360) + 540) % 360) - 180
  const dLat = (latDeg - origin.latDeg) * RAD
  const cos = Math.cos(origin.latDeg * RAD)
  // Second order: the parallel shrinks by M·sin φ toward the pole, and curves away from the plane's east–west line.
  const east = (primeVertical * cos - meridian * sin * dLat) * dLon * RAD
  const north = meridian * dLat + (primeVertical * sin * cos * (dLon * RAD) ** 2) / 2
  return { east: east / M_PER_FT, north: north / M_PER_FT }
}

/** Where the local frame lies on the earth: corner A, and the compass bearing from A to B (clockwise from true north). */
export type FrameOnEarth = { readonly cornerA: Geodetic; readonly bearingDeg: Uncertain }

/**
 * East and north into the local frame. Facing the wall from outside, A is left and B right, so y (away from the house)
 * lies 90° clockwise of x: x = E·sin θ + N·cos θ, y = E·cos θ − N·sin θ. The bearing's error turns the point about A:
 * ∂x/∂θ = y, ∂y/∂θ = −x per radian.
 */
export function toFrame(frame: FrameOnEarth, east: Uncertain, north: Uncertain): Point {
  const theta = frame.bearingDeg.value * RAD
  const [sin, cos] = [Math.sin(theta), Math.cos(theta)]
  const x = east.value * sin + north.value * cos
  const y = east.value * cos - north.value * sin
  const inputs = [east, north, frame.bearingDeg]
  return { x: propagate(x, inputs, [sin, cos, y * RAD]), y: propagate(y, inputs, [cos, -sin, -x * RAD]) }
}

/** The other way: east and north of corner A, ft, of a place in the local frame. */
export function fromFrame(
  frame: FrameOnEarth,
  { x, y }: Point,
): { readonly east: Uncertain; readonly north: Uncertain } {
  const theta = frame.bearingDeg.value * RAD
  const [sin, cos] = [Math.sin(theta), Math.cos(theta)]
  const east = x.value * sin + y.value * cos
  const north = x.value * cos - y.value * sin
  const inputs = [x, y, frame.bearingDeg]
  return {
    east: propagate(east, inputs, [sin, cos, north * RAD]),
    north: propagate(north, inputs, [cos, -sin, -east * RAD]),
  }
}
