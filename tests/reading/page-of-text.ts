import type { PageWords } from '../../src/reading/page-words.ts'

/** A page from lines of text in fixed pitch, one character 1/90 of the width: for readings told by their text alone. */
export function pageOfText(lines: readonly string[], page = 1): PageWords {
  const words = lines.flatMap((line, row) =>
    [...line.matchAll(/\S+/g)].map((match) => ({
      text: match[0],
      box: { x: 0.05 + match.index / 100, y: 0.05 + row * 0.018, w: match[0].length / 100, h: 0.0125 },
      confidence: 1,
    })),
  )
  return {
    page,
    widthPt: 612,
    heightPt: 792,
    turn: 0,
    levelDegrees: 0,
    readBy: 'text-layer',
    words,
    secondWords: null,
  }
}
