import type { PDFPageProxy } from 'pdfjs-dist'
import type { TextItem } from 'pdfjs-dist/types/src/display/api.d.ts'
import type { Word } from '../../reading/page-words.ts'
import { charAdvances } from './char-advances.ts'

type Placed = { text: string; x0: number; x1: number; baseline: number; size: number }

/** Gap between two runs, in ems, below which they belong to one word: a change of font within a word. */
const JOIN_EM = 0.12
/** Smaller text is not for people. */
const LEAST_PT = 2

/**
 * The words of a page's own text, with boxes in fractions of the page. pdfjs gives runs of text with a width; a run
 * is cut at its spaces in the proportion of usual letter widths, and runs that touch are joined.
 */
export async function textLayerWords(page: PDFPageProxy): Promise<Word[]> {
  const { items, styles } = await page.getTextContent({ disableNormalization: false })
  const viewport = page.getViewport({ scale: 1 })
  const placed: Placed[] = []
  let open: Placed | undefined
  for (const item of items) {
    if (!('str' in item)) continue
    const run = runOf(item, viewport.transform as number[], styles[item.fontName]?.vertical === true)
    if (!run || item.str.trim() === '') {
      open = undefined
      continue
    }
    for (const word of wordsOf(item.str, run)) {
      const gap = open ? word.x0 - open.x1 : Number.POSITIVE_INFINITY
      const joins =
        open !== undefined &&
        Math.abs(open.baseline - word.baseline) < 0.3 * word.size &&
        gap < JOIN_EM * word.size &&
        gap > -0.5 * word.size &&
        !word.startsAfterSpace
      if (joins && open) {
        open.text += word.text
        open.x1 = Math.max(open.x1, word.x1)
      } else {
        open = { ...word }
        placed.push(open)
      }
    }
    if (/\s$/.test(item.str)) open = undefined
  }
  const { width, height } = viewport
  return withoutTwins(
    placed
      .map(({ text, x0, x1, baseline, size }): Word => {
        const top = baseline - 0.76 * size
        return {
          text,
          box: { x: x0 / width, y: top / height, w: (x1 - x0) / width, h: (0.98 * size) / height },
          confidence: 1,
        }
      })
      .filter(({ box }) => box.x + box.w > 0 && box.y + box.h > 0 && box.x < 1 && box.y < 1)
      .map((word) => ({ ...word, box: within(word.box) })),
  )
}

type Run = { x: number; baseline: number; width: number; size: number }

function runOf(item: TextItem, view: readonly number[], vertical: boolean): Run | undefined {
  const [a, b, c, d, e, f] = multiply(view, item.transform as number[])
  const size = Math.hypot(c!, d!)
  const along = Math.hypot(a!, b!)
  // Text that does not run from left to right on the page as shown is a stamp or a margin note: not read here.
  if (vertical || size < LEAST_PT || a! <= 0 || Math.abs(b!) > 0.2 * along) return undefined
  return { x: e!, baseline: f!, width: item.width * Math.hypot(view[0]!, view[1]!), size }
}

const multiply = (m: readonly number[], n: readonly number[]): number[] => [
  m[0]! * n[0]! + m[2]! * n[1]!,
  m[1]! * n[0]! + m[3]! * n[1]!,
  m[0]! * n[2]! + m[2]! * n[3]!,
  m[1]! * n[2]! + m[3]! * n[3]!,
  m[0]! * n[4]! + m[2]! * n[5]! + m[4]!,
  m[1]! * n[4]! + m[3]! * n[5]! + m[5]!,
]

function wordsOf(text: string, run: Run): (Placed & { startsAfterSpace: boolean })[] {
  const advances = charAdvances(text)
  const total = advances.at(-1) ?? 1
  const at = (index: number): number => run.x + (advances[index]! / (total || 1)) * run.width
  return [...text.matchAll(/\S+/g)].map((match) => ({
    text: match[0].replace(/[\u0000-\u001f\u007f\u00ad]/g, ''),
    x0: at(match.index),
    x1: at(match.index + match[0].length),
    baseline: run.baseline,
    size: run.size,
    startsAfterSpace: match.index > 0,
  }))
}

/** Bold is sometimes made by printing twice a hair apart: one word of the two is enough. */
function withoutTwins(words: readonly Word[]): Word[] {
  const seen = new Map<string, Word[]>()
  return words.filter((word) => {
    if (word.text === '') return false
    const same = seen.get(word.text) ?? []
    const twin = same.some(
      ({ box }) =>
        Math.abs(box.x - word.box.x) < 0.25 * word.box.h && Math.abs(box.y - word.box.y) < 0.25 * word.box.h,
    )
    if (!twin) seen.set(word.text, [...same, word])
    return !twin
  })
}

function within(box: Word['box']): Word['box'] {
  const clamp = (value: number): number => +Math.min(1, Math.max(0, value)).toFixed(5)
  const [x, y] = [clamp(box.x), clamp(box.y)]
  return { x, y, w: +(clamp(box.x + box.w) - x).toFixed(5), h: +(clamp(box.y + box.h) - y).toFixed(5) }
}
