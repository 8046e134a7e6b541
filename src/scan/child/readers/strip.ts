import sharp from 'sharp'
import type { Picture } from '../image/picture.ts'
import type { LineBox } from './find-lines.ts'

/** A line cut out of the page and brought to the height that both readers read at. */
export type Strip = {
  readonly box: LineBox
  /** Gray, a byte a point, `HEIGHT` rows of `width`. */
  readonly gray: Uint8Array
  readonly width: number
  /** Where the strip lies along the page, in its points. */
  readonly left: number
  readonly wide: number
}

export const HEIGHT = 48
/** Both networks take their steps in eights of points. */
const STEP = 8
const MOST_WIDTH = 3200

export async function stripsOf(page: Picture, boxes: readonly LineBox[]): Promise<Strip[]> {
  const strips: Strip[] = []
  for (const box of boxes) {
    const cut = cutOf(page, box)
    if (!cut) continue
    const width = Math.max(
      16,
      Math.min(MOST_WIDTH, Math.ceil((cut.width * HEIGHT) / cut.height / STEP) * STEP),
    )
    const gray = await sharp(page.data, { raw: { width: page.width, height: page.height, channels: 1 } })
      .extract(cut)
      .resize(width, HEIGHT, { fit: 'fill', kernel: 'cubic' })
      .grayscale()
      .raw()
      .toBuffer()
    strips.push({ box, gray, width, left: cut.left, wide: cut.width })
  }
  return strips
}

function cutOf(
  page: Picture,
  box: LineBox,
): { left: number; top: number; width: number; height: number } | undefined {
  const left = Math.max(0, Math.floor(box.x))
  const top = Math.max(0, Math.floor(box.y))
  const width = Math.min(page.width, Math.ceil(box.x + box.w)) - left
  const height = Math.min(page.height, Math.ceil(box.y + box.h)) - top
  return width >= 3 && height >= 3 ? { left, top, width, height } : undefined
}
