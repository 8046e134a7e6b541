import type { Box } from '../../records/source.ts'
import type { PageWords, Word } from '../page-words.ts'

/** A word, or a part of one that says something of its own: `1000gal.conc.` is three. */
export type Piece = {
  readonly text: string
  readonly box: Box
  readonly confidence: number
  readonly struck: boolean
  /** Follows the piece before it without a space. */
  readonly glued: boolean
  readonly row: number
  /** Which of the words it is of, and which letters of it. */
  readonly word: number
  readonly from: number
}

/** Between these two letters of a word a new piece begins. */
const CUTS = [
  /(?<=[:=;|)\]])(?=[^:=;|)\]])/,
  /(?<=[^([])(?=[([])/,
  /(?<=[\d'"’”.])(?=[xX×@&]\d)|(?<=[\d'"’”.][xX×@&])(?=\d)/,
  /(?<=,)(?=\D)|(?<=\D,)(?=\d)/,
  /(?<=^\d{1,2}-)(?=\d+(?:\.\d+)?['’])/,
  /(?<=\d)(?=[A-Za-z]{2})(?!(?:st|nd|rd|th)\b)/,
  /(?<=[A-Za-z]{3})(?=\d)/,
  /(?<=[A-Za-z]{2}\.)(?=[A-Za-z]{2})/,
  /(?<=[_.…]{2})(?=[^_.…])|(?<=[^_.…])(?=[_.…]{3}|__)/,
  /(?<=[A-Za-z]{3}[/–—-])(?=[A-Za-z\d]{2})/,
]
const CUT = new RegExp(CUTS.map(({ source }) => source).join('|'), 'g')

/** Offsets at which the pieces of a word begin; the first is 0. */
export function piecesBegin(text: string): number[] {
  const begins = [0]
  if (text.length < 2 || /^[A-Za-z]+$/.test(text)) return begins
  for (const { index } of text.matchAll(CUT)) if (index > 0 && index < text.length) begins.push(index)
  return begins
}

const middle = ({ y, h }: Box): number => y + h / 2

/** Words in lines from top to bottom, each from left to right: their places in the list given. */
export function linesOfWords(words: readonly { readonly box: Box }[]): number[][] {
  const order = words.map((_, index) => index).sort((a, b) => middle(words[a]!.box) - middle(words[b]!.box))
  const lines: { y: number; h: number; words: number[] }[] = []
  for (const index of order) {
    const { box } = words[index]!
    const line = lines.slice(-3).find(({ y, h }) => Math.abs(middle(box) - y) < 0.45 * Math.max(box.h, h))
    if (line) {
      line.words.push(index)
      // A line may run askew: it follows its last words.
      line.y = 0.7 * line.y + 0.3 * middle(box)
      line.h = Math.max(line.h, box.h)
    } else lines.push({ y: middle(box), h: box.h, words: [index] })
  }
  return lines
    .sort((a, b) => a.y - b.y)
    .map((line) => line.words.sort((a, b) => words[a]!.box.x - words[b]!.box.x))
}

/** The pieces of a page's words in reading order. */
export function piecesOf(words: readonly Word[]): Piece[] {
  return linesOfWords(words).flatMap((line, row) =>
    line.flatMap((index) => {
      const word = words[index]!
      const begins = piecesBegin(word.text)
      return begins.map((from, nth): Piece => {
        const to = begins[nth + 1] ?? word.text.length
        const share = word.box.w / Math.max(1, word.text.length)
        return {
          text: word.text.slice(from, to),
          box: { x: word.box.x + from * share, y: word.box.y, w: (to - from) * share, h: word.box.h },
          confidence: word.confidence,
          struck: word.struck === true,
          glued: nth > 0,
          row,
          word: index,
          from,
        }
      })
    }),
  )
}

/** First what the better reader saw, then what only the other saw: words where the first has none. */
export function wordsTogether({ words, secondWords }: PageWords): readonly Word[] {
  if (secondWords === null) return words
  const missed = secondWords.filter(
    ({ box, confidence, text }) =>
      confidence > 0.5 &&
      /[A-Za-z0-9]/.test(text) &&
      !words.some((known) => overlap(known.box, box) > 0.15 * box.w * box.h),
  )
  return [...words, ...missed]
}

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y))
