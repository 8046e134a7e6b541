import type { Box } from '../../../records/source.ts'
import type { Picture } from './picture.ts'

/** A small square drawn on the page, and the share of its inside that is ink. */
export type TickBox = { readonly box: Box; readonly inked: number }

/** Sides of boxes to tick, in inches (common practice of form printers). */
const LEAST_SIDE = 0.085
const MOST_SIDE = 0.24
const INK = 140
/** Share of each side's length that must be drawn straight for four lines to be a box and no round letter. */
const DRAWN = 0.86
/** Straight within this share of the side: round letters leave it at their corners. */
const STRAIGHT = 0.1

/** Boxes to tick on a level page of so many dots an inch: connected ink of the shape of a small square, hollow or crossed. */
export function tickBoxes(page: Picture, dotsPerInch: number): TickBox[] {
  const step = Math.max(1, Math.floor(dotsPerInch / 300))
  const small = shrunk(page, step)
  const perInch = dotsPerInch / step
  return patches(small)
    .filter(
      ({ w, h }) =>
        w >= LEAST_SIDE * perInch &&
        h >= LEAST_SIDE * perInch &&
        w <= MOST_SIDE * perInch &&
        h <= MOST_SIDE * perInch &&
        w / h > 0.72 &&
        w / h < 1.4,
    )
    .flatMap((patch) => {
      const inked = inkInFrame(small, patch)
      if (inked === undefined) return []
      const { width, height } = small
      return [
        { box: { x: patch.x / width, y: patch.y / height, w: patch.w / width, h: patch.h / height }, inked },
      ]
    })
}

type Patch = { readonly x: number; readonly y: number; readonly w: number; readonly h: number }

/** The darkest of each square of points, so that a thin line is not lost. */
function shrunk({ data, width, height }: Picture, step: number): Picture {
  if (step === 1) return { data, width, height }
  const [w, h] = [Math.floor(width / step), Math.floor(height / step)]
  const out = new Uint8Array(w * h)
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      let darkest = 255
      for (let dy = 0; dy < step; dy++)
        for (let dx = 0; dx < step; dx++)
          darkest = Math.min(darkest, data[(y * step + dy) * width + x * step + dx]!)
      out[y * w + x] = darkest
    }
  return { data: out, width: w, height: h }
}

/** Connected ink, corners included. */
function patches({ data, width, height }: Picture): Patch[] {
  const seen = new Uint8Array(data.length)
  const stack: number[] = []
  const found: Patch[] = []
  for (let start = 0; start < data.length; start++) {
    if (seen[start] || data[start]! >= INK) continue
    let [x0, y0, x1, y1] = [width, height, 0, 0]
    stack.push(start)
    seen[start] = 1
    while (stack.length > 0) {
      const at = stack.pop()!
      const [x, y] = [at % width, (at / width) | 0]
      if (x < x0) x0 = x
      if (x > x1) x1 = x
      if (y < y0) y0 = y
      if (y > y1) y1 = y
      for (let dy = -1; dy <= 1; dy++)
        for (let dx = -1; dx <= 1; dx++) {
          const [nx, ny] = [x + dx, y + dy]
          if (nx < 0 || ny < 0 || nx >= width || ny >= height) continue
          const next = ny * width + nx
          if (seen[next] || data[next]! >= INK) continue
          seen[next] = 1
          stack.push(next)
        }
    }
    found.push({ x: x0, y: y0, w: x1 - x0 + 1, h: y1 - y0 + 1 })
  }
  return found
}

/** The share of ink inside where four sides are drawn; undefined where they are not. */
function inkInFrame({ data, width }: Picture, { x, y, w, h }: Patch): number | undefined {
  const inked = (px: number, py: number): boolean => data[py * width + px]! < INK
  const deep = Math.max(2, Math.round(w * STRAIGHT) + 1)
  const along = (count: number, test: (at: number) => boolean): number => {
    let hits = 0
    for (let at = 0; at < count; at++) if (test(at)) hits += 1
    return hits / count
  }
  const near = (test: (depth: number) => boolean): boolean =>
    Array.from({ length: deep }, (_, depth) => depth).some(test)
  const sides = [
    along(w, (at) => near((depth) => inked(x + at, y + depth))),
    along(w, (at) => near((depth) => inked(x + at, y + h - 1 - depth))),
    along(h, (at) => near((depth) => inked(x + depth, y + at))),
    along(h, (at) => near((depth) => inked(x + w - 1 - depth, y + at))),
  ]
  if (sides.some((share) => share < DRAWN)) return undefined
  const inset = Math.round(Math.min(w, h) * 0.25)
  let [ink, total] = [0, 0]
  for (let py = y + inset; py < y + h - inset; py++)
    for (let px = x + inset; px < x + w - inset; px++) {
      total += 1
      if (inked(px, py)) ink += 1
    }
  return total === 0 ? undefined : ink / total
}
