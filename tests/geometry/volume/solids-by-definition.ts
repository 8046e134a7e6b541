import { integrate } from './quadrature.ts'

/**
 * The shapes again, from their definitions and from nothing in the code under test: each is the integral over height
 * of the length of a chord or the area of a level section, themselves integrals where they are not plain.
 */

/** Half the chord of a circle of radius r at y from its center. */
const half = (r: number, y: number): number => Math.sqrt(Math.max(0, r * r - y * y))

export const circleBelow = (d: number, h: number): number =>
  integrate((y) => 2 * half(d / 2, y - d / 2), 0, Math.min(h, d))

export const ellipseBelow = (w: number, H: number, h: number): number =>
  integrate((y) => w * Math.sqrt(Math.max(0, 1 - ((2 * y) / H - 1) ** 2)), 0, Math.min(h, H))

/** Two half circles and a flat: the chord at each height, in pieces where it has corners. */
export function ovalBelow(w: number, H: number, h: number): number {
  const r = Math.min(w, H) / 2
  const chord = (y: number): number => {
    if (w >= H) return w - H + 2 * half(r, y - r)
    if (y < r) return 2 * half(r, y - r)
    return y > H - r ? 2 * half(r, y - (H - r)) : w
  }
  const joints = [0, r, H - r, H].map((y) => Math.min(Math.max(y, 0), h)).sort((a, b) => a - b)
  return joints.slice(1).reduce((sum, to, i) => sum + integrate(chord, joints[i]!, to), 0)
}

/** Liquid in one dish: over the plane circle, the depth of the cap behind each point. */
export function dishBelow(d: number, h: number, c: number): number {
  const r = d / 2
  const R = (r * r + c * c) / (2 * c)
  const bulge = (x: number, y: number): number => Math.sqrt(Math.max(0, R * R - x * x - y * y)) - (R - c)
  return integrate(
    (y) => 2 * integrate((x) => bulge(x, y), 0, half(r, y), 1 / 16),
    -r,
    Math.min(h, d) - r,
    1 / 16,
  )
}

/** Liquid in one half ellipsoid of axial half-axis c: level sections are half ellipses. */
export function ellipsoidHeadBelow(d: number, h: number, c: number): number {
  const r = d / 2
  return integrate((y) => (Math.PI / 2) * half(r, y) ** 2 * (c / r), -r, Math.min(h, d) - r)
}

export const sphereBelow = (d: number, h: number): number =>
  integrate((y) => Math.PI * half(d / 2, y - d / 2) ** 2, 0, Math.min(h, d))

/** Sloping walls: the plan at each height, its sides straight between floor and liquid line. */
export const taperedBox = (L: number, W: number, D: number, l: number, w: number, r = 0): number =>
  integrate((z) => (l + ((L - l) * z) / D) * (w + ((W - w) * z) / D) - (4 - Math.PI) * r * r, 0, D)

export const frustum = (d: number, D: number, e: number): number =>
  integrate((z) => (Math.PI / 4) * (e + ((d - e) * z) / D) ** 2, 0, D)
