import type { PDFPageProxy } from 'pdfjs-dist'
import type { Word } from '../../reading/page-words.ts'

/** Operators of pdfjs that draw a picture, and those that move and scale what follows (`OPS` of pdfjs 5). */
const SAVE = 10
const RESTORE = 11
const TRANSFORM = 12
const PAINTS = new Set([83, 85, 86, 88])
/** Share of the page that one picture covers from which the page is a picture of paper. */
const MOST_OF_THE_PAGE = 0.6

/** Is the page one picture with, at most, text hidden behind it? Told by what it draws, not by what it says. */
export async function isPictureOfPaper(page: PDFPageProxy): Promise<boolean> {
  const { fnArray, argsArray } = await page.getOperatorList()
  const [, , width, height] = page.view as [number, number, number, number]
  const stack: number[] = []
  let scale = 1
  for (const [at, operator] of fnArray.entries()) {
    if (operator === SAVE) stack.push(scale)
    else if (operator === RESTORE) scale = stack.pop() ?? 1
    else if (operator === TRANSFORM) {
      const [a, b, c, d] = argsArray[at] as [number, number, number, number]
      scale *= Math.abs(a * d - b * c)
    } else if (PAINTS.has(operator) && scale > MOST_OF_THE_PAGE * width * height) return true
  }
  return false
}

/** The share of hidden words that the picture has too. */
export function hiddenTextShare(hidden: readonly Word[], read: readonly Word[]): number {
  const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '')
  const seen = read.map(({ text }) => plain(text)).join(' ')
  const told = hidden.map(({ text }) => plain(text)).filter((text) => text !== '')
  return told.length === 0 ? 0 : told.filter((text) => seen.includes(text)).length / told.length
}
