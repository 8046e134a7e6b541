import { type InferenceSession, Tensor } from 'onnxruntime-node'
import sharp from 'sharp'
import type { Picture } from '../image/picture.ts'

/** A line of text on a picture, in its points. */
export type LineBox = {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
  readonly score: number
}

/** Longest side that the network sees: lines of eight points are ten rows there. From trial. */
const LONGEST = 1600
/** As the network was trained to be used: share of ink to count, share to keep a line, how far a line is let out. */
const INK = 0.3
const KEPT = 0.5
const LET_OUT = 1.6
const LEAST_SIDE = 4

/** Lines of text on a level page, by the text detection network (differentiable binarisation, PP-OCRv4). */
export async function findLines(finder: InferenceSession, page: Picture): Promise<LineBox[]> {
  const scale = Math.min(1, LONGEST / Math.max(page.width, page.height))
  const width = Math.max(32, Math.round((page.width * scale) / 32) * 32)
  const height = Math.max(32, Math.round((page.height * scale) / 32) * 32)
  const small = await sharp(page.data, { raw: { width: page.width, height: page.height, channels: 1 } })
    .resize(width, height, { fit: 'fill', kernel: 'lanczos2' })
    .grayscale()
    .raw()
    .toBuffer()
  const { [finder.outputNames[0]!]: output } = await finder.run({
    [finder.inputNames[0]!]: normalized(small, width, height),
  })
  const ink = output!.data as Float32Array
  const [sx, sy] = [page.width / width, page.height / height]
  return boxesIn(ink, width, height).map(({ x, y, w, h, score }) => {
    // The network marks the heart of a line; its area over its rim tells how far the letters reach beyond.
    const out = (w * h * LET_OUT) / (2 * (w + h))
    const [left, top] = [Math.max(0, x - out), Math.max(0, y - out)]
    const [right, bottom] = [Math.min(width, x + w + out), Math.min(height, y + h + out)]
    return { x: left * sx, y: top * sy, w: (right - left) * sx, h: (bottom - top) * sy, score }
  })
}

/** Means and deviations of the pictures that the network was trained on (ImageNet), the gray in all three colors. */
function normalized(gray: Uint8Array, width: number, height: number): Tensor {
  const size = width * height
  const values = new Float32Array(3 * size)
  for (const [channel, mean, deviation] of [
    [0, 0.485, 0.229],
    [1, 0.456, 0.224],
    [2, 0.406, 0.225],
  ] as const) {
    const table = Float32Array.from({ length: 256 }, (_, level) => (level / 255 - mean) / deviation)
    for (let at = 0; at < size; at++) values[channel * size + at] = table[gray[at]!]!
  }
  return new Tensor('float32', values, [1, 3, height, width])
}

/** Connected patches of the network's answer as boxes. */
function boxesIn(ink: Float32Array, width: number, height: number): LineBox[] {
  const seen = new Uint8Array(ink.length)
  const stack = new Int32Array(ink.length)
  const boxes: LineBox[] = []
  for (let start = 0; start < ink.length; start++) {
    if (seen[start] || ink[start]! < INK) continue
    let [x0, y0, x1, y1, sum, count, top] = [width, height, 0, 0, 0, 0, 0]
    stack[top++] = start
    seen[start] = 1
    while (top > 0) {
      const at = stack[--top]!
      const [x, y] = [at % width, (at / width) | 0]
      sum += ink[at]!
      count += 1
      if (x < x0) x0 = x
      if (x > x1) x1 = x
      if (y < y0) y0 = y
      if (y > y1) y1 = y
      for (const next of [at - 1, at + 1, at - width, at + width]) {
        if (next < 0 || next >= ink.length || seen[next] || ink[next]! < INK) continue
        if ((next === at - 1 && x === 0) || (next === at + 1 && x === width - 1)) continue
        seen[next] = 1
        stack[top++] = next
      }
    }
    const [w, h] = [x1 - x0 + 1, y1 - y0 + 1]
    if (sum / count >= KEPT && h >= LEAST_SIDE && w >= LEAST_SIDE)
      boxes.push({ x: x0, y: y0, w, h, score: sum / count })
  }
  return boxes
}
