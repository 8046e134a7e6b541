import type { Box } from '../../records/source.ts'
import type { Word } from '../page-words.ts'

/** A word as it is searched, and the same stretch of it as the reader saw it: equally long. */
export type SeenWord = Word & { readonly seen: string }

/** A word's place in a strip: where its text begins, the text as the strip holds it, and the word it came from. */
export type Spot = {
  readonly at: number
  readonly length: number
  readonly word: SeenWord
  readonly page: number
}

/** A run of text that is read as one line, and which word each part of it came from. */
export type Strip = { readonly text: string; readonly spots: readonly Spot[] }

/** What a stretch of a strip shows on paper. */
export type Excerpt = {
  readonly words: string
  /** The same with letters where the reader saw letters and figures were taken. */
  readonly seen: string
  readonly page: number
  readonly box: Box
  /** The reader's own confidence: the least of the words taken. */
  readonly confidence: number
}

export function stripOf(words: readonly SeenWord[], page: number): Strip {
  let text = ''
  const spots = words.map((word): Spot => {
    const at = text === '' ? 0 : text.length + 1
    text += `${text === '' ? '' : ' '}${word.text}`
    return { at, length: word.text.length, word, page }
  })
  return { text, spots }
}

/** Strips one after the other, with one space between: the lines of a paragraph. */
export function joined(strips: readonly Strip[]): Strip {
  let text = ''
  const spots: Spot[] = []
  for (const strip of strips) {
    const shift = text === '' ? 0 : text.length + 1
    text += `${text === '' ? '' : ' '}${strip.text}`
    spots.push(...strip.spots.map((spot) => ({ ...spot, at: spot.at + shift })))
  }
  return { text, spots }
}

/** The part of a strip between two offsets, with the box it covers; a part of a word takes its share of the width. */
export function excerpt(strip: Strip, start: number, end: number): Excerpt {
  const touched = strip.spots.filter((spot) => spot.at < end && spot.at + spot.length > start)
  const first = touched[0] ?? strip.spots[0]
  const onPage = touched.filter((spot) => spot.page === first?.page)
  const boxes = onPage.map(({ at, length, word: { box } }): Box => {
    const from = Math.max(0, start - at) / length
    const to = Math.min(length, end - at) / length
    return { x: box.x + box.w * from, y: box.y, w: box.w * (to - from), h: box.h }
  })
  return {
    words: strip.text.slice(start, end).trim(),
    seen: onPage
      .map(({ at, word }) => word.seen.slice(Math.max(0, start - at), Math.max(0, end - at)))
      .join(' ')
      .trim(),
    page: first?.page ?? 1,
    box: boxes.length > 0 ? around(boxes) : { x: 0, y: 0, w: 1, h: 1 },
    confidence: Math.min(1, ...onPage.map(({ word }) => word.confidence)),
  }
}

/** The smallest box around all of them. */
export function around(boxes: readonly Box[]): Box {
  const x = Math.min(...boxes.map((box) => box.x))
  const y = Math.min(...boxes.map((box) => box.y))
  return {
    x,
    y,
    w: Math.max(...boxes.map((box) => box.x + box.w)) - x,
    h: Math.max(...boxes.map((box) => box.y + box.h)) - y,
  }
}
