import type { Picture } from './picture.ts'

const MOST_DEGREES = 6
/** Side that the page is made small to: lines of text are still lines there. */
const SMALL = 900

/**
 * Degrees by which the lines of a page fall to the right (clockwise positive), found where the sums of its rows vary
 * most when sheared: text lines and rules then stand apart from the white between them.
 */
export function skewDegrees(page: Picture): number {
  const points = inkOf(page)
  if (points.x.length < 200) return 0
  let best = { degrees: 0, score: sharpness(points, 0) }
  for (const [from, to, step] of [
    [-MOST_DEGREES, MOST_DEGREES, 0.5],
    [-0.5, 0.5, 0.1],
    [-0.1, 0.1, 0.025],
  ] as const) {
    const around = step === 0.5 ? 0 : best.degrees
    for (let offset = from; offset <= to + 1e-9; offset += step) {
      const degrees = around + offset
      const score = sharpness(points, degrees)
      if (score > best.score) best = { degrees, score }
    }
  }
  return Math.abs(best.degrees) < 0.05 ? 0 : best.degrees
}

type Points = { readonly x: Float32Array; readonly y: Float32Array; readonly height: number }

/** Places of ink on a page made small. */
function inkOf({ data, width, height }: Picture): Points {
  const step = Math.max(1, Math.floor(Math.max(width, height) / SMALL))
  const [x, y]: [number[], number[]] = [[], []]
  for (let row = 0; row + step <= height; row += step)
    for (let column = 0; column + step <= width; column += step) {
      let darkest = 255
      for (let at = 0; at < step; at++) darkest = Math.min(darkest, data[(row + at) * width + column + at]!)
      if (darkest < 140) {
        x.push(column / step)
        y.push(row / step)
      }
    }
  return { x: Float32Array.from(x), y: Float32Array.from(y), height: Math.ceil(height / step) }
}

function sharpness({ x, y, height }: Points, degrees: number): number {
  const slope = Math.tan((degrees * Math.PI) / 180)
  const margin = 100
  const sums = new Float32Array(height + 2 * margin)
  for (let at = 0; at < x.length; at++) {
    const row = Math.round(y[at]! - x[at]! * slope) + margin
    if (row >= 0 && row < sums.length) sums[row]! += 1
  }
  let score = 0
  for (let row = 1; row < sums.length; row++) score += (sums[row]! - sums[row - 1]!) ** 2
  return score
}
