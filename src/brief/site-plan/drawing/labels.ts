import { FOOT, WIDTH } from './frame.ts'

export type Box = { readonly x: number; readonly y: number; readonly w: number; readonly h: number }

/** What is to be written at a place; `clear` is how far from it the words have to stay. */
export type Wanted = {
  readonly words: string
  readonly x: number
  readonly y: number
  readonly clear: number
}

export type Placed = Wanted & {
  readonly at: readonly [number, number]
  readonly box: Box
  /** From the words to their place, where they had to go far. */
  readonly leader: readonly [number, number, number, number] | null
}

export const SIZE = 13
/** Mean width of a sign against the size of the type, on the wide side: labels keep apart in any face. */
const SIGN = 0.56
const HIGH = 16
/** Beside, below, above, then slantwise; each nearer before any farther. */
const WAYS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
] as const

/** Places each label where it lies over nothing that is taken: no mark, no wall, no other label, no edge. */
export function placeLabels(
  wanted: readonly Wanted[],
  obstacles: readonly Box[],
  height: number,
): readonly Placed[] {
  const taken = [...obstacles]
  return wanted.map((one) => {
    const w = one.words.length * SIZE * SIGN
    const boxes = [0, 8, 18, 30, 44, 60, 80, 104, 132, 164].flatMap((more) =>
      WAYS.map(([dx, dy]): Box => {
        const reach = one.clear + 4 + more
        return {
          x: one.x + dx * reach - (dx === 0 ? w / 2 : dx < 0 ? w : 0),
          y: one.y + dy * (reach + HIGH / 2) - HIGH / 2,
          w,
          h: HIGH,
        }
      }),
    )
    const inside = boxes.filter(
      ({ x, y }) => x >= 4 && x + w <= WIDTH - 4 && y >= 4 && y + HIGH <= height - FOOT,
    )
    const box =
      inside.find((it) => !taken.some((other) => overlap(it, other))) ??
      inside.toSorted((a, b) => covered(a, taken) - covered(b, taken))[0] ??
      boxes[0]!
    taken.push(box)
    const [cx, cy] = [
      Math.min(Math.max(one.x, box.x), box.x + box.w),
      Math.min(Math.max(one.y, box.y), box.y + box.h),
    ]
    const far = Math.hypot(cx - one.x, cy - one.y)
    const leader =
      far > one.clear + 14
        ? ([
            cx,
            cy,
            one.x + ((cx - one.x) * one.clear) / far,
            one.y + ((cy - one.y) * one.clear) / far,
          ] as const)
        : null
    return { ...one, at: [box.x + w / 2, box.y + 12], box, leader }
  })
}

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h

const covered = (box: Box, taken: readonly Box[]): number => taken.filter((it) => overlap(it, box)).length
