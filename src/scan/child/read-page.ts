import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist'
import type { Word } from '../../reading/page-words.ts'
import type { PageReading, UnreadReason } from '../outcome.ts'
import { pictureWasDropped } from './left-out.ts'
import { hiddenTextShare, isPictureOfPaper } from './picture-of-paper.ts'
import { textLayerWords } from './text-layer.ts'
import { isGarbled } from './text-quality.ts'
import { widgetWords } from './widgets.ts'
import { MOST_WORDS, TOO_MANY_WORDS, withinBounds } from './within-bounds.ts'

const SAYS = {
  'no-text-layer': 'This page is an image without text.',
  'garbled-text': 'The text stored in this page is not readable. Read the image instead.',
  blank: 'This page is blank.',
  'picture-too-large':
    'The image on this page has more than 100 million pixels and was left out. Scan the document again at 300 dpi.',
} as const satisfies Partial<Record<UnreadReason, string>>

const DROPPED = 'An image on this page is too large and was left out. The text was read.'

export type PageOptions = {
  /** Whether pages without good text of their own are recognized from their picture. */
  readonly pictures: 'read' | 'leave'
  /** Whether the file holds pictures at all: without any, no page has to be looked at twice. */
  readonly hasImages: boolean
  /** Whether its pages may have fields or notes to them. */
  readonly hasFields: boolean
}

/**
 * One page: by its own text where that is good, else by its picture. Text that a scanner's software has hidden behind
 * a picture of paper is set aside for the picture itself, for it is right less often.
 */
export async function readPage(
  pdf: PDFDocumentProxy,
  number: number,
  options: PageOptions,
): Promise<PageReading> {
  const page = await pdf.getPage(number)
  try {
    pictureWasDropped()
    const all = [...(await textLayerWords(page)), ...(options.hasFields ? await widgetWords(page) : [])]
    const words = withinBounds(all)
    const unread = (why: keyof typeof SAYS): PageReading => ({
      state: 'unread',
      page: number,
      why,
      says: SAYS[why],
      mayRetry: false,
    })
    const drawn = words.length === 0 ? (await page.getOperatorList()).fnArray.length : 1
    const picture = options.hasImages && (await isPictureOfPaper(page))
    const dropped = pictureWasDropped()
    if (words.length === 0 && dropped) return unread('picture-too-large')
    if (drawn === 0) return unread('blank')
    const garbled = isGarbled(words)
    if (words.length > 0 && !garbled && !(picture && options.pictures === 'read'))
      return ownText(page, words, [
        ...(dropped ? [DROPPED] : []),
        ...(all.length > MOST_WORDS ? [TOO_MANY_WORDS] : []),
      ])
    if (options.pictures === 'leave') return unread(garbled ? 'garbled-text' : 'no-text-layer')
    // The readers of pictures take longer to load than many a file of text takes to read.
    const { readPicture } = await import('./read-picture.ts')
    const read = await readPicture(pdf, page)
    if (read.words.length === 0 && (read.secondWords ?? []).length === 0) return unread('blank')
    const bounded = {
      ...read,
      words: withinBounds(read.words),
      secondWords: read.secondWords && withinBounds(read.secondWords),
    }
    return { state: 'read', words: bounded, notes: notesOn(words, garbled, read.words) }
  } finally {
    page.cleanup()
  }
}

function ownText(page: PDFPageProxy, words: readonly Word[], notes: readonly string[]): PageReading {
  const { width, height } = page.getViewport({ scale: 1 })
  return {
    state: 'read',
    notes,
    words: {
      page: page.pageNumber,
      widthPt: width,
      heightPt: height,
      turn: 0,
      levelDegrees: 0,
      readBy: 'text-layer',
      words,
      secondWords: null,
    },
  }
}

function notesOn(own: readonly Word[], garbled: boolean, read: readonly Word[]): string[] {
  if (garbled) return ['The text stored in this page is not readable. Its image was read instead.']
  if (own.length === 0) return []
  const share = Math.round(100 * hiddenTextShare(own, read))
  return [
    `This page is an image with hidden text. The image was read; ${share}% of the hidden words are the same.`,
  ]
}
