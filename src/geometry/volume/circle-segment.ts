/**
 * The part of a circle of diameter d below a level h above its lowest point, 0 ≤ h ≤ d (outside that: nothing, or
 * all). With r = d/2, θ = acos((r − h)/r) half the angle the chord subtends, s = √(h·(d − h)) half the chord:
 *
 *     A = r²·acos((r − h)/r) − (r − h)·√(2rh − h²)      ∂A/∂h = 2s      ∂A/∂d = r·θ − s
 *
 * θ is taken as 2·atan(√h/√(d − h)), the same angle without the loss of digits near floor and crown.
 */
export type Segment = { readonly area: number; readonly chord: number; readonly slopeOfDiameter: number }

export function circleSegment(d: number, h: number): Segment {
  const r = d / 2
  const level = Math.min(Math.max(h, 0), d)
  const theta = 2 * Math.atan2(Math.sqrt(level), Math.sqrt(d - level))
  const s = Math.sqrt(level * (d - level))
  return { area: r * r * theta - (r - level) * s, chord: 2 * s, slopeOfDiameter: r * theta - s }
}
