import type { Word } from '../../../reading/page-words.ts'
import type { Picture } from './picture.ts'

const INK = 140
/** A line through a word runs within this part of its height; above and below lie tops, feet and underlines. */
const BAND = [0.28, 0.72] as const
/** Letters leave white between them; a drawn line leaves next to none. */
const DRAWN = 0.93
/** Thicker than this share of the height it is a bar of something else. */
const THICK = 0.28

/** Is a line drawn through a word? One row after the other may carry it, for hands and scans are not level. */
function isStruck({ data, width, height }: Picture, { text, box }: Word): boolean {
  const [x0, x1] = [Math.round(box.x * width), Math.round((box.x + box.w) * width)]
  const [y0, y1] = [Math.round(box.y * height), Math.round((box.y + box.h) * height)]
  const [wide, tall] = [x1 - x0, y1 - y0]
  if (text.length < 2 || wide < 1.1 * tall || tall < 8 || !/[A-Za-z0-9]/.test(text)) return false
  const from = y0 + Math.round(tall * BAND[0])
  const to = y0 + Math.round(tall * BAND[1])
  const inked = (x: number, y: number): boolean => data[y * width + x]! < INK
  let crossed = 0
  let thick = 0
  let at = -1
  for (let x = x0; x < x1; x++) {
    // Follow the line: it goes on within a point or two of where it was.
    const near =
      at < 0 ? [] : [at, at - 1, at + 1, at - 2, at + 2].filter((y) => y >= from && y < to && inked(x, y))
    const y = near[0] ?? firstInk(inked, x, from, to)
    if (y < 0) {
      continue
    }
    crossed += at < 0 || near.length > 0 ? 1 : 0
    at = y
    let [top, foot] = [y, y]
    while (top > y0 && inked(x, top - 1)) top -= 1
    while (foot < y1 && inked(x, foot + 1)) foot += 1
    if (foot - top + 1 <= Math.max(3, THICK * tall)) thick += 1
  }
  // Between the letters the line stands alone, and is thin there.
  return crossed >= DRAWN * wide && thick >= 0.2 * wide
}

function firstInk(inked: (x: number, y: number) => boolean, x: number, from: number, to: number): number {
  for (let y = from; y < to; y++) if (inked(x, y)) return y
  return -1
}

/** The words of a page, those with a line through them said to be struck. */
export const withStrikes = (page: Picture, words: readonly Word[]): Word[] =>
  words.map((word) => (isStruck(page, word) ? { ...word, struck: true } : word))
