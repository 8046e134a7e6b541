import { type InferenceSession, Tensor } from 'onnxruntime-node'
import type { Alphabet } from './alphabet.ts'
import type { LineBox } from './find-lines.ts'
import { HEIGHT, type Strip } from './strip.ts'

/** A sign as read: which, how sure, where its middle lies along the line in points of the page, and how likely a space is before it. */
export type Sign = {
  readonly sign: string
  readonly sure: number
  readonly x: number
  readonly space: number
}
export type ReadLine = { readonly box: LineBox; readonly signs: readonly Sign[] }

/** A network that reads lines, the signs it knows, and in how many colors it wants them. */
export type LineReader = {
  readonly session: InferenceSession
  readonly alphabet: Alphabet
  readonly channels: 1 | 3
}

/** What each line says, sign by sign: both networks answer by connectionist temporal classification (Graves et al. 2006). */
export async function readStrips(
  { session, alphabet, channels }: LineReader,
  strips: readonly Strip[],
): Promise<ReadLine[]> {
  const lines: ReadLine[] = []
  for (const { box, gray, width, left, wide } of strips) {
    const { [session.outputNames[0]!]: output } = await session.run({
      [session.inputNames[0]!]: normalized(gray, width, channels),
    })
    const [, steps, classes] = output!.dims as [number, number, number]
    const signs = decoded(output!.data as Float32Array, steps, classes, alphabet)
    lines.push({
      box,
      signs: signs.map(({ step, ...sign }) => ({ ...sign, x: left + ((step + 0.5) / steps) * wide })),
    })
  }
  return lines
}

function normalized(gray: Uint8Array, width: number, channels: 1 | 3): Tensor {
  const size = width * HEIGHT
  const values = new Float32Array(channels * size)
  for (let at = 0; at < size; at++) values[at] = gray[at]! / 127.5 - 1
  for (let channel = 1; channel < channels; channel++) values.copyWithin(channel * size, 0, size)
  return new Tensor('float32', values, [1, channels, HEIGHT, width])
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
