import { circleSegment } from './circle-segment.ts'

/**
 * The wetted part of a lying tank's section at a level h above its lowest point: its area, ∂A/∂h (the breadth of the
 * liquid's surface) and ∂A/∂ of the section's width and height. A level past the top counts as full.
 */
export type Section = {
  readonly area: number
  readonly breadth: number
  readonly slopeOfWidth: number
  readonly slopeOfHeight: number
}
export type SectionOf = (width: number, height: number, level: number) => Section

/** Circle of diameter `height`; the width is not looked at. */
export const circleSection: SectionOf = (_, diameter, level) => {
  const segment = circleSegment(diameter, level)
  return {
    area: segment.area,
    breadth: segment.chord,
    slopeOfWidth: 0,
    slopeOfHeight: segment.slopeOfDiameter,
  }
}

/**
 * Two half circles with straight sides between.
 * Wider than high: A = (w − H)·h + segment(H, h).
 * Higher than wide, by thirds: segment(w, h) in the lower half circle; π·w²/8 + w·(h − w/2) between the straight
 * sides; the whole, π·w²/4 + w·(H − w), less segment(w, H − h) in the upper half circle.
 */
export const ovalSection: SectionOf = (w, H, level) => {
  const h = Math.min(level, H)
  if (w >= H) {
    const s = circleSegment(H, h)
    return {
      area: (w - H) * h + s.area,
      breadth: w - H + s.chord,
      slopeOfWidth: h,
      slopeOfHeight: s.slopeOfDiameter - h,
    }
  }
  if (h <= w / 2) {
    const s = circleSegment(w, h)
    return { area: s.area, breadth: s.chord, slopeOfWidth: s.slopeOfDiameter, slopeOfHeight: 0 }
  }
  if (h <= H - w / 2)
    return {
      area: (Math.PI * w * w) / 8 + w * (h - w / 2),
      breadth: w,
      slopeOfWidth: (Math.PI * w) / 4 + h - w,
      slopeOfHeight: 0,
    }
  const s = circleSegment(w, H - h)
  return {
    area: (Math.PI * w * w) / 4 + w * (H - w) - s.area,
    breadth: s.chord,
    slopeOfWidth: (Math.PI * w) / 2 + H - 2 * w - s.slopeOfDiameter,
    slopeOfHeight: w - s.chord,
  }
}

/** Ellipse: a circle of diameter H stretched sideways by w/H, so A = (w/H)·segment(H, h). */
export const ellipseSection: SectionOf = (w, H, level) => {
  const s = circleSegment(H, level)
  const stretch = w / H
  return {
    area: stretch * s.area,
    breadth: stretch * s.chord,
    slopeOfWidth: s.area / H,
    slopeOfHeight: stretch * (s.slopeOfDiameter - s.area / H),
  }
}
