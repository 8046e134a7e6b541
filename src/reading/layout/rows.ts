import type { Box } from '../../records/source.ts'
import type { PageWords, Word } from '../page-words.ts'
import { correctedFigures } from '../values/corrected.ts'
import { around, type SeenWord, type Strip, stripOf } from './strip.ts'

/** Words on one line of the page with no wide gap between them: what the eye takes together. */
export type Phrase = {
  readonly strip: Strip
  readonly box: Box
  readonly row: number
  /** Place among the phrases of its row, from the left. */
  readonly place: number
}

export type Row = { readonly phrases: readonly Phrase[]; readonly box: Box }

/**
 * Gap between words, in heights of the text, from which they are apart: more than two spaces of a typewriter. Boxes of
 * a file's own text are as high as its type, those of a picture only as high as its ink.
 */
const WIDE_GAP = { 'text-layer': 1.05, picture: 1.37 } as const
/** Blanks to fill in and leaders between a label and its value. */
const FILLING = /^[_.·…\-–—=*]{2,}$|^[_·…]+$/

/** A page's words in lines from top to bottom, each cut into phrases at wide gaps. */
export function rowsOf(page: PageWords, words: readonly Word[]): readonly Row[] {
  const aspect = page.heightPt / page.widthPt
  const upright = words
    .map((word) => readable(word, page.readBy === 'picture'))
    .filter(({ text }) => text !== '')
    .sort((a, b) => middle(a.box) - middle(b.box))
  const lines: SeenWord[][] = []
  for (const word of upright) {
    const line = lines.findLast((known) => known.some((other) => sameLine(other.box, word.box)))
    // Only the lines just above can hold it: the words come sorted from top to bottom.
    if (line && lines.indexOf(line) >= lines.length - 4) line.push(word)
    else lines.push([word])
  }
  return lines
    .map((line) => line.sort((a, b) => a.box.x - b.box.x))
    .sort((a, b) => middle(a[0]!.box) - middle(b[0]!.box))
    .map((line, row): Row => {
      const phrases = cut(line, aspect, WIDE_GAP[page.readBy]).map(
        (part, place): Phrase => ({
          strip: stripOf(part, page.page),
          box: around(part.map(({ box }) => box)),
          row,
          place,
        }),
      )
      return { phrases, box: around(phrases.map(({ box }) => box)) }
    })
}

const middle = (box: Box): number => box.y + box.h / 2

const sameLine = (a: Box, b: Box): boolean =>
  Math.abs(middle(a) - middle(b)) < 0.45 * Math.max(a.h, b.h) && Math.max(a.h, b.h) < 2.5 * Math.min(a.h, b.h)

function cut(line: readonly SeenWord[], aspect: number, wide: number): SeenWord[][] {
  const parts: SeenWord[][] = []
  for (const word of line) {
    const part = parts.at(-1)
    const before = part?.at(-1)
    const gap = before ? word.box.x - (before.box.x + before.box.w) : 0
    if (part && before && gap < wide * Math.min(before.box.h, word.box.h) * aspect) part.push(word)
    else parts.push([word])
  }
  return parts
}

/** A word as it is searched: without what fills its blank, and on a picture with figures where letters were seen. */
function readable(word: Word, misread: boolean): SeenWord {
  const seen = withoutFilling(word.text, misread)
  return { ...word, text: misread ? correctedFigures(seen).text : seen, seen }
}

/**
 * `__1,000__` is a value written over its blank; a run of dots leads the eye and says nothing. On a picture a blank is
 * read as dashes and a row of dots as some of them.
 */
function withoutFilling(text: string, misread: boolean): string {
  if (FILLING.test(text)) return ''
  const plain = text.replace(/^[_·…]+|[_·…]+$/g, '').replace(/^\.{3,}|\.{3,}$/g, '')
  if (!misread) return plain
  return plain.replace(
    /^[-–—_~.,·]+(?=[A-Za-z0-9(])|(?<=[A-Za-z0-9)"'’”])[–—_~]+[-–—_~.]*$|^[-–—_~.,·|]+$/g,
    '',
  )
}
