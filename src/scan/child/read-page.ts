import type { PDFDocumentProxy } from 'pdfjs-dist'
import type { PageReading, UnreadReason } from '../outcome.ts'
import { textLayerWords } from './text-layer.ts'
import { isGarbled } from './text-quality.ts'
import { widgetWords } from './widgets.ts'

const SAYS = {
  'no-text-layer': 'This page is a picture without text.',
  'garbled-text': 'The text stored in this page does not spell words; read the picture instead.',
  blank: 'Nothing is on this page.',
} as const satisfies Partial<Record<UnreadReason, string>>

/** One page by its own text, with what was typed into its form fields. */
export async function readPage(pdf: PDFDocumentProxy, number: number): Promise<PageReading> {
  const page = await pdf.getPage(number)
  try {
    const viewport = page.getViewport({ scale: 1 })
    const words = [...(await textLayerWords(page)), ...(await widgetWords(page))]
    const unread = (why: keyof typeof SAYS): PageReading => ({
      state: 'unread',
      page: number,
      why,
      says: SAYS[why],
      mayRetry: false,
    })
    if (words.length === 0) {
      const { fnArray } = await page.getOperatorList()
      return unread(fnArray.length === 0 ? 'blank' : 'no-text-layer')
    }
    if (isGarbled(words)) return unread('garbled-text')
    return {
      state: 'read',
      notes: [],
      words: {
        page: number,
        widthPt: viewport.width,
        heightPt: viewport.height,
        turn: 0,
        levelDegrees: 0,
        readBy: 'text-layer',
        words,
        secondWords: null,
      },
    }
  } finally {
    page.cleanup()
  }
}
