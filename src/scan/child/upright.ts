import { Tensor } from 'onnxruntime-node'
import sharp from 'sharp'
import type { Picture } from './image/picture.ts'
import { quarterTurned } from './image/prepare.ts'
import type { LineBox } from './readers/find-lines.ts'
import type { Models } from './readers/models.ts'

/** Quarter turns clockwise that bring a page upright. */
export type Turn = 0 | 90 | 180 | 270

/** Lines that are asked, and the share of them that must be sure, for a page to be turned on its head. */
const ASKED = 12
const SURE = 0.9
const [HEIGHT, WIDTH] = [48, 192]

/** Do lines run down the page instead of across it? Most are much longer than high on a page that lies right. */
export const liesOnItsSide = (boxes: readonly LineBox[]): boolean => {
  const tall = boxes.filter(({ w, h }) => h > 1.8 * w).length
  const wide = boxes.filter(({ w, h }) => w > 1.8 * h).length
  return tall > 6 && tall > 2 * wide
}

/** Does a level page stand on its head? Its longest lines are asked one by one (text direction network). */
export async function standsOnItsHead(
  { turner }: Models,
  page: Picture,
  boxes: readonly LineBox[],
): Promise<boolean> {
  const asked = [...boxes].sort((a, b) => b.w - a.w).slice(0, ASKED)
  let votes = 0
  for (const box of asked) {
    const { [turner.outputNames[0]!]: output } = await turner.run({
      [turner.inputNames[0]!]: await cut(page, box),
    })
    if ((output!.data as Float32Array)[1]! > SURE) votes += 1
  }
  return asked.length > 0 && votes > asked.length * 0.6
}

async function cut(page: Picture, box: LineBox): Promise<Tensor> {
  const [left, top] = [Math.max(0, Math.floor(box.x)), Math.max(0, Math.floor(box.y))]
  const width = Math.max(1, Math.min(page.width - left, Math.ceil(box.w)))
  const height = Math.max(1, Math.min(page.height - top, Math.ceil(box.h)))
  const fit = Math.max(1, Math.min(WIDTH, Math.ceil((HEIGHT * width) / height)))
  const gray = await sharp(page.data, { raw: { width: page.width, height: page.height, channels: 1 } })
    .extract({ left, top, width: Math.min(width, Math.ceil((height * WIDTH) / HEIGHT)), height })
    .resize(fit, HEIGHT, { fit: 'fill' })
    .grayscale()
    .raw()
    .toBuffer()
  const values = new Float32Array(3 * HEIGHT * WIDTH)
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < fit; x++) {
      const value = gray[y * fit + x]! / 127.5 - 1
      for (let channel = 0; channel < 3; channel++) values[(channel * HEIGHT + y) * WIDTH + x] = value
    }
  return new Tensor('float32', values, [1, 3, HEIGHT, WIDTH])
}

export const turnedBy = (page: Picture, turn: Turn): Promise<Picture> =>
  turn === 0 ? Promise.resolve(page) : quarterTurned(page, turn)
