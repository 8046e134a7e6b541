import type { Word } from '../../../reading/page-words.ts'
import { widestGap } from '../image/gaps.ts'
import type { Picture } from '../image/picture.ts'
import type { ReadLine, Sign } from './read-lines.ts'

/**
 * White between two signs that makes it a space, in heights of the line: what the network itself takes for spaces on
 * that line, else so many times the usual white between letters. From the gaps of five faces, clean to fair.
 */
const TIMES_LETTER_GAP = 3.2
const LEAST_GAP = 0.15
/** Share of the found box that is margin above and below the letters. */
const MARGIN = 0.16

/** A line's signs as words with boxes. The network often leaves out spaces, so the white on the picture is measured. */
export function wordsOf(line: ReadLine, page: Picture): Word[] {
  const { box } = line
  const signs = line.signs.filter(({ sign }) => sign !== ' ')
  if (signs.length === 0) return []
  const spaced = spacedBefore(line.signs)
  const gaps = signs.map((sign, index) =>
    index === 0 ? 0 : widestGap(page, box, signs[index - 1]!.x, sign.x) / box.h,
  )
  const known = gaps.filter((_, index) => spaced.has(index))
  const usual = median(gaps.slice(1).filter((_, index) => !spaced.has(index + 1)))
  const least =
    known.length > 0
      ? Math.max(LEAST_GAP, 0.85 * Math.min(...known))
      : Math.max(LEAST_GAP, TIMES_LETTER_GAP * usual)
  const advance =
    signs.length > 1 ? (signs.at(-1)!.x - signs[0]!.x) / (line.signs.length - 1 || 1) : box.h * 0.4
  const figureAdvance = median(
    signs
      .slice(1)
      .flatMap((sign, index) =>
        inFigures(signs[index]!) && inFigures(sign) ? [sign.x - signs[index]!.x] : [],
      ),
  )
  // A 1 stands alone in its width: between figures the distance tells more than the white.
  const isApart = (index: number): boolean => {
    if (gaps[index]! < least) return false
    const [before, sign] = [signs[index - 1]!, signs[index]!]
    return !(inFigures(before) && inFigures(sign)) || sign.x - before.x > 1.4 * figureAdvance
  }
  const words: Sign[][] = []
  signs.forEach((sign, index) => {
    const open = words.at(-1)
    if (!open || spaced.has(index) || isApart(index)) words.push([sign])
    // A long dash or a broad mark is seen twice.
    else if (sign.sign !== open.at(-1)!.sign || !/[-–—"'_]/.test(sign.sign)) open.push(sign)
  })
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

/** Places, among the signs that are not spaces, before which the network read one. */
function spacedBefore(signs: readonly Sign[]): ReadonlySet<number> {
  const places = new Set<number>()
  let count = 0
  for (const { sign } of signs) {
    if (sign === ' ') places.add(count)
    else count += 1
  }
  return places
}

const inFigures = ({ sign }: Sign): boolean => /[0-9,.'"/-]/.test(sign)

function median(values: readonly number[]): number {
  if (values.length === 0) return 0
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor((sorted.length - 1) / 2)]!
}
