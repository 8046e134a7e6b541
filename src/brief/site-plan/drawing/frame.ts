import type { SitePlan } from '../plan.ts'

/** Narrow enough that its words can be read on a phone without scrolling. Pixels of the drawing. */
export const WIDTH = 480
const MARGIN = 44
const TALLEST = 460
/** Room under the plan for the scale and the key. */
export const FOOT = 94
/** The house is drawn so deep, feet: how deep it is nobody says. */
const HOUSE_FT = 7

export type At = (x: number, y: number) => readonly [number, number]

/** Where feet come to lie on the sheet. */
export type Frame = {
  readonly at: At
  /** Pixels a foot. */
  readonly scale: number
  /** 1, or −1 where the plan is turned half round. */
  readonly turn: 1 | -1
  readonly height: number
  /** Depth of the house as drawn, pixels. */
  readonly house: number
}

/**
 * To one scale both ways, as large as it goes. Turned so that the front of the house is up where the wall is its front
 * or its rear; a setback's ring makes nothing smaller: it is cut at the edge.
 */
export function frameOf({ reference, marks }: SitePlan): Frame {
  const turn = reference.wall === 'front' ? -1 : 1
  const reach = marks.flatMap(({ region }) => region.ring)
  const xs = [0, reference.baselineFt, ...reach.map(([x]) => x)].map((x) => turn * x)
  const ys = [-HOUSE_FT, 8, ...reach.map(([, y]) => y)].map((y) => turn * y)
  const [left, right] = [Math.min(...xs) - 3, Math.max(...xs) + 3]
  const [top, bottom] = [Math.min(...ys) - 2, Math.max(...ys) + 4]
  const scale = Math.min(
    (WIDTH - 2 * MARGIN) / Math.max(right - left, 1),
    TALLEST / Math.max(bottom - top, 1),
  )
  const aside = (WIDTH - (right - left) * scale) / 2
  return {
    at: (x, y) => [aside + (turn * x - left) * scale, MARGIN + (turn * y - top) * scale],
    scale,
    turn,
    height: Math.round((bottom - top) * scale + 2 * MARGIN + FOOT),
    house: HOUSE_FT * scale,
  }
}

/** A coordinate to a tenth of a pixel. */
export const r = (value: number): string => String(Math.round(value * 10) / 10)
export const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`)
