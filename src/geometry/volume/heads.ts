import { slopesNumerically } from '../../measure/propagate-numerically.ts'

/**
 * The liquid in both heads of a lying cylinder of diameter d filled to h, heads bulging by `rise` c: volume, surface
 * and slopes. Domain 0 < h ≤ d.
 */
export type Heads = {
  readonly cuFt: number
  readonly surface: number
  readonly slopeOfDiameter: number
  readonly slopeOfDepth: number
  readonly slopeOfRise: number
}

/**
 * Two halves of an ellipsoid with axial half-axis c: V = π·c·h²·(1 − 2h/(3d)) for both. A sphere's segment
 * π·h²·(3r − h)/3, squeezed along the axis by c/r. The 2:1 head is c = d/4.
 */
export function ellipticalHeads(d: number, h: number, c: number): Heads {
  const perRise = Math.PI * h * h * (1 - (2 * h) / (3 * d))
  const surface = 2 * Math.PI * c * h * (1 - h / d)
  return {
    cuFt: perRise * c,
    surface,
    slopeOfDiameter: (2 * Math.PI * c * h ** 3) / (3 * d * d),
    slopeOfDepth: surface,
    slopeOfRise: perRise,
  }
}

/** The sphere a dish of rise c is cut from, and F, its level sections added up from the axis to the level h. */
export type Dish = {
  readonly r: number
  readonly R: number
  readonly m: number
  readonly F: (h: number) => number
}

/**
 * A dish is the cap of a sphere of radius R = (r² + c²)/(2c) beyond a plane at m = R − c from its center. At height y
 * from the axis its level section is a segment of a circle of radius ρ = √(R² − y²), whose area integrates, with
 * q = √(r² − y²), to
 *
 *     F(y) = (R²·y − y³/3)·atan(q/m) − (2/3)·m·y·q − m·(r² + 2R²)/3·atan(y/q) + (2/3)·R³·atan(m·y/(R·q))
 *
 * F is odd, so the liquid in one dish is F(h − r) + F(r). Valid for 0 < c ≤ r (a dish, up to a half sphere). q and the
 * second angle are taken from h and d, where r² − y² would lose the digits that a flat dish needs.
 */
export function dish(d: number, c: number): Dish {
  const r = d / 2
  const R = (r * r + c * c) / (2 * c)
  const m = R - c
  const whole = (Math.PI / 6) * (2 * R ** 3 - m * (r * r + 2 * R * R))
  const F = (h: number): number => {
    // At the floor and the crown the angles are right angles, which 0/0 of a half sphere would not say.
    if (h <= 0) return -whole
    if (h >= d) return whole
    const y = h - r
    const q = Math.sqrt(h * (d - h))
    return (
      (R * R * y - y ** 3 / 3) * Math.atan2(q, m) -
      (2 / 3) * m * y * q -
      ((m * (r * r + 2 * R * R)) / 3) * (2 * Math.atan2(Math.sqrt(h), Math.sqrt(d - h)) - Math.PI / 2) +
      (2 / 3) * R ** 3 * Math.atan2(m * y, R * q)
    )
  }
  return { r, R, m, F }
}

const dishVolume = (d: number, h: number, c: number): number => {
  const { F } = dish(d, c)
  return F(h) + F(d)
}

/**
 * Both dished heads. ∂V/∂h is the area of the level section; ∂V/∂c is taken numerically; ∂V/∂d follows from both,
 * since V grows with the cube of the size: d·V_d + h·V_h + c·V_c = 3V (Euler).
 */
export function sphericalHeads(d: number, h: number, c: number): Heads {
  const cuFt = 2 * dishVolume(d, h, c)
  const surface = 2 * levelSection(d, h, c)
  const slopeOfRise = 2 * (slopesNumerically(([rise = 0]) => dishVolume(d, h, rise), [c])[0] ?? 0)
  return {
    cuFt,
    surface,
    slopeOfDiameter: (3 * cuFt - h * surface - c * slopeOfRise) / d,
    slopeOfDepth: surface,
    slopeOfRise,
  }
}

/** Area of one dish's level section: the segment of the circle ρ = √(R² − y²) beyond the plane at m. */
export function levelSection(d: number, h: number, c: number): number {
  const { r, R, m } = dish(d, c)
  const y = h - r
  const q = Math.sqrt(Math.max(0, h * (d - h)))
  return (R * R - y * y) * Math.atan2(q, m) - m * q
}
