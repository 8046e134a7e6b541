import { type InferenceSession, Tensor } from 'onnxruntime-node'
import sharp from 'sharp'
import type { Picture } from '../image/picture.ts'
import type { Alphabet } from './alphabet.ts'
import type { LineBox } from './find-lines.ts'

/** A sign as read: which, how sure, where its middle lies along the line in points of the page, and how likely a space is before it. */
export type Sign = {
  readonly sign: string
  readonly sure: number
  readonly x: number
  readonly space: number
}
export type ReadLine = { readonly box: LineBox; readonly signs: readonly Sign[] }

/** Height that the network reads at, and the points of width that one of its steps covers. */
const HEIGHT = 48
const STEP = 8
const MOST_WIDTH = 3200

/** What each line says, sign by sign (CRNN with connectionist temporal classification, PP-OCRv4). */
export async function readLines(
  reader: InferenceSession,
  alphabet: Alphabet,
  page: Picture,
  boxes: readonly LineBox[],
): Promise<ReadLine[]> {
  const lines: ReadLine[] = []
  for (const box of boxes) {
    const cut = cutOf(page, box)
    if (!cut) continue
    const width = Math.max(
      16,
      Math.min(MOST_WIDTH, Math.ceil((cut.width * HEIGHT) / cut.height / STEP) * STEP),
    )
    const line = await sharp(page.data, { raw: { width: page.width, height: page.height, channels: 1 } })
      .extract(cut)
      .resize(width, HEIGHT, { fit: 'fill', kernel: 'cubic' })
      .grayscale()
      .raw()
      .toBuffer()
    const { [reader.outputNames[0]!]: output } = await reader.run({
      [reader.inputNames[0]!]: normalized(line, width),
    })
    const [, steps, classes] = output!.dims as [number, number, number]
    const signs = decoded(output!.data as Float32Array, steps, classes, alphabet)
    lines.push({
      box,
      signs: signs.map(({ step, ...sign }) => ({
        ...sign,
        x: cut.left + ((step + 0.5) / steps) * cut.width,
      })),
    })
  }
  return lines
}

type Cut = { left: number; top: number; width: number; height: number }

function cutOf(page: Picture, box: LineBox): Cut | undefined {
  const left = Math.max(0, Math.floor(box.x))
  const top = Math.max(0, Math.floor(box.y))
  const width = Math.min(page.width, Math.ceil(box.x + box.w)) - left
  const height = Math.min(page.height, Math.ceil(box.y + box.h)) - top
  return width >= 3 && height >= 3 ? { left, top, width, height } : undefined
}

function normalized(gray: Uint8Array, width: number): Tensor {
  const size = width * HEIGHT
  const values = new Float32Array(3 * size)
  for (let at = 0; at < size; at++) values[at] = gray[at]! / 127.5 - 1
  values.copyWithin(size, 0, size)
  values.copyWithin(2 * size, 0, size)
  return new Tensor('float32', values, [1, 3, HEIGHT, width])
}

/** The likeliest wanted sign of each step; repeats of one sign are one, blanks part them. */
function decoded(
  chances: Float32Array,
  steps: number,
  classes: number,
  { blank, classes: wanted }: Alphabet,
): { sign: string; sure: number; step: number; space: number }[] {
  const signs: { sign: string; sure: number; step: number; steps: number; space: number }[] = []
  const spaceIndex = wanted.find(({ sign }) => sign === ' ')!.index
  let space = 0
  let last = blank as number
  for (let step = 0; step < steps; step++) {
    const row = step * classes
    let [best, sign, chance] = [blank as number, '', chances[row + blank]!]
    for (const { index, sign: candidate } of wanted) {
      const own = chances[row + index]!
      if (own > chance) [best, sign, chance] = [index, candidate, own]
    }
    space = Math.max(space, chances[row + spaceIndex]!)
    if (best !== blank && best !== spaceIndex) {
      const open = signs.at(-1)
      if (best === last && open) {
        // The middle of a run of equal steps is the middle of the sign.
        open.step = (open.step * open.steps + step) / (open.steps + 1)
        open.steps += 1
        open.sure = Math.max(open.sure, chance)
      } else {
        signs.push({ sign, sure: chance, step, steps: 1, space })
        space = 0
      }
    }
    last = best
  }
  return signs.map(({ steps: _, ...sign }) => sign)
}
