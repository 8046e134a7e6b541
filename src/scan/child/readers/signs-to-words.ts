import type { Word } from '../../../reading/page-words.ts'
import { widestGap } from '../image/gaps.ts'
import type { Picture } from '../image/picture.ts'
import type { ReadLine, Sign } from './read-strips.ts'

/** How likely a reader must call a space for two signs to stand apart: always, and with white between them on the picture. */
export type Spacing = { readonly likely: number; readonly possible: number }

/**
 * The general network rarely calls a space the likeliest, yet it gives it some chance where there is one and hardly
 * any where there is none; the white on the picture, in heights of the line, settles the rest. On 9,595 pairs of signs
 * (eight forms and five faces, clean to fair) this misses 3 spaces in 1,300 and makes up 8.
 */
export const GENERAL_SPACING: Spacing = { likely: 0.05, possible: 0.01 }
/** The reader of our own was trained to say where spaces are. */
export const OWN_SPACING: Spacing = { likely: 0.5, possible: 0.1 }
const GAP = 0.15
const WIDE_GAP = 0.5
/** Share of the found box that is margin above and below the letters. */
const MARGIN = 0.16

/** A line's signs as words with boxes. */
export function wordsOf({ box, signs }: ReadLine, page: Picture, spacing: Spacing): Word[] {
  const words: Sign[][] = []
  signs.forEach((sign, index) => {
    const open = words.at(-1)
    const before = signs[index - 1]
    if (!open || !before || isApart(before, sign, widestGap(page, box, before.x, sign.x) / box.h, spacing))
      words.push([sign])
    // A long dash or a broad mark is seen twice.
    else if (sign.sign !== before.sign || !/[-–—"'_]/.test(sign.sign)) open.push(sign)
  })
  const advance = signs.length > 1 ? (signs.at(-1)!.x - signs[0]!.x) / signs.length : box.h * 0.4
  return words.map((word) => {
    const left = Math.max(box.x, word[0]!.x - advance * 0.6)
    const right = Math.min(box.x + box.w, word.at(-1)!.x + advance * 0.6)
    return {
      text: word.map(({ sign }) => sign).join(''),
      confidence: word.reduce((least, { sure }) => Math.min(least, sure), 1),
      box: {
        x: left / page.width,
        y: (box.y + box.h * MARGIN) / page.height,
        w: (right - left) / page.width,
        h: (box.h * (1 - 2 * MARGIN)) / page.height,
      },
    }
  })
}

const isApart = (before: Sign, sign: Sign, gap: number, { likely, possible }: Spacing): boolean =>
  sign.space > likely ||
  (sign.space > possible && gap > GAP) ||
  (gap > WIDE_GAP && before.sign !== '.' && sign.sign !== '.')
