import type { Vertex } from '../position/polygon.ts'
import { type Gap, nearestPoints, type Outline, outlineDistance } from './outline.ts'

/**
 * How a thing reaches out from the point of it that was tied, ft. A bar is tied somewhere along its middle line, and
 * nobody says where; `beside` is how much farther its likes beside it may reach. Its bearing is radians from x
 * toward y in the local frame, null where nobody says.
 */
export type Extent =
  | { readonly kind: 'point' }
  | { readonly kind: 'disc'; readonly radius: number; readonly beside: number }
  | {
      readonly kind: 'bar'
      readonly length: number
      readonly width: number
      readonly bearing: number | null
      readonly beside: number
    }
  | { readonly kind: 'wall'; readonly to: Vertex }
  /** It reaches out, and its size is not known. */
  | { readonly kind: 'unknown' }

export type Sited = { readonly at: Vertex; readonly extent: Extent }

/** All the ground that it may cover: a bar slid along its bearing both ways, or turned all round where that is not known. */
function cover({ at, extent }: Sited): Outline {
  switch (extent.kind) {
    case 'point':
      return { ring: [at], grow: 0 }
    case 'disc':
      return { ring: [at], grow: extent.radius + extent.beside }
    case 'bar':
      return extent.bearing === null
        ? { ring: [at], grow: Math.hypot(extent.length, extent.width / 2 + extent.beside) }
        : {
            ring: bar(at, -extent.length, extent.length, extent.width + 2 * extent.beside, extent.bearing),
            grow: 0,
          }
    case 'wall':
      return { ring: [at, extent.to], grow: 0 }
    case 'unknown':
      return { ring: [at], grow: Number.POSITIVE_INFINITY }
  }
}

/**
 * The outlines of which one is the thing's at the farthest: a bar tied at one end or the other (how far it lies is convex
 * in where along it was tied, so the ends are the extremes), or no more than the tied point where its bearing is open.
 */
function leastOf({ at, extent }: Sited): readonly Outline[] {
  switch (extent.kind) {
    case 'bar':
      return extent.bearing === null
        ? [{ ring: [at], grow: 0 }]
        : [
            { ring: bar(at, 0, extent.length, extent.width, extent.bearing), grow: 0 },
            { ring: bar(at, -extent.length, 0, extent.width, extent.bearing), grow: 0 },
          ]
    case 'disc':
      return [{ ring: [at], grow: extent.radius }]
    case 'unknown':
      return [{ ring: [at], grow: 0 }]
    default:
      return [cover({ at, extent })]
  }
}

/** Between two things, from outline to outline: the nearest and the farthest that what is known of them leaves, ft. */
export function separation(a: Sited, b: Sited): { readonly nearest: number; readonly farthest: number } {
  const farthest = leastOf(a).flatMap((one) => leastOf(b).map((other) => outlineDistance(one, other)))
  return { nearest: outlineDistance(cover(a), cover(b)), farthest: Math.max(...farthest) }
}

/** The points between which the nearest and the farthest run, with what the two reach beyond them, to be written down. */
export function spans(a: Sited, b: Sited): { readonly nearest: Spanned; readonly farthest: Spanned } {
  const spanned = (one: Outline, other: Outline): Spanned => ({
    ...nearestPoints(one, other),
    reach: one.grow + other.grow,
  })
  const far = leastOf(a)
    .flatMap((one) => leastOf(b).map((other) => spanned(one, other)))
    .reduce((best, it) => (it.ft - it.reach > best.ft - best.reach ? it : best))
  return { nearest: spanned(cover(a), cover(b)), farthest: far }
}
export type Spanned = Gap & { readonly reach: number }

function bar([x, y]: Vertex, from: number, to: number, width: number, bearing: number): readonly Vertex[] {
  const [ux, uy] = [Math.cos(bearing), Math.sin(bearing)]
  const corner = (along: number, aside: number): Vertex => [
    x + along * ux - aside * uy,
    y + along * uy + aside * ux,
  ]
  return [corner(from, -width / 2), corner(to, -width / 2), corner(to, width / 2), corner(from, width / 2)]
}
