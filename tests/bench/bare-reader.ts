import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist'
import type { PageWords, Word } from '../../src/reading/page-words.ts'
import { pagePicture } from '../../src/scan/child/page-picture.ts'
import { findLines } from '../../src/scan/child/readers/find-lines.ts'
import { type ReadLine, readStrips, type Sign } from '../../src/scan/child/readers/read-strips.ts'
import { readers } from '../../src/scan/child/readers/readers.ts'
import { stripsOf } from '../../src/scan/child/readers/strip.ts'

/**
 * Both readers called bare on the page as it is: nothing cleaned, leveled or turned, spaces where the first one's
 * network calls them likeliest. The words are the first reader's; the second one runs for the time that it takes.
 */
export async function readBare(pdf: PDFDocumentProxy, page: PDFPageProxy): Promise<PageWords> {
  const picture = await pagePicture(pdf, page, 300, 2.4e7)
  const { models, own, general } = await readers()
  const boxes = await findLines(models.finder, picture)
  const strips = await stripsOf(picture, boxes)
  const [lines] = await Promise.all([readStrips(own, strips), readStrips(general, strips)])
  const { width, height } = page.getViewport({ scale: 1 })
  return {
    page: page.pageNumber,
    widthPt: width,
    heightPt: height,
    turn: 0,
    levelDegrees: 0,
    readBy: 'picture',
    words: lines.flatMap((line) => bareWords(line, picture)),
    secondWords: null,
  }
}

const LIKELIEST = 0.5

function bareWords(
  { box, signs }: ReadLine,
  page: { readonly width: number; readonly height: number },
): Word[] {
  const words: Sign[][] = []
  for (const sign of signs) {
    const open = words.at(-1)
    if (!open || sign.space > LIKELIEST) words.push([sign])
    else open.push(sign)
  }
  const advance = signs.length > 1 ? (signs.at(-1)!.x - signs[0]!.x) / signs.length : box.h * 0.4
  return words.map((word) => ({
    text: word.map(({ sign }) => sign).join(''),
    confidence: Math.min(...word.map(({ sure }) => sure)),
    box: {
      x: (word[0]!.x - advance / 2) / page.width,
      y: box.y / page.height,
      w: (word.at(-1)!.x - word[0]!.x + advance) / page.width,
      h: box.h / page.height,
    },
  }))
}
