import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist'
import type { Picture } from './image/picture.ts'

/** What pdfjs needs of a canvas, whichever library makes it. */
type CanvasAndContext = {
  readonly canvas: { width: number; height: number }
  readonly context: {
    getImageData(x: number, y: number, w: number, h: number): { readonly data: Uint8ClampedArray }
  }
}
type CanvasFactory = {
  create(width: number, height: number): CanvasAndContext
  destroy(made: CanvasAndContext): void
}

/** The page drawn on white, upright, in gray, `dotsPerInch` fine unless that would pass `maxPixels`. */
export async function pagePicture(
  pdf: PDFDocumentProxy,
  page: PDFPageProxy,
  dotsPerInch: number,
  maxPixels: number,
): Promise<Picture> {
  const size = page.getViewport({ scale: 1 })
  const wanted = dotsPerInch / 72
  const scale = Math.min(wanted, Math.sqrt(maxPixels / (size.width * size.height)))
  const viewport = page.getViewport({ scale })
  const [width, height] = [Math.max(1, Math.round(viewport.width)), Math.max(1, Math.round(viewport.height))]
  const factory = pdf.canvasFactory as CanvasFactory
  const made = factory.create(width, height)
  try {
    await page.render({
      canvas: null,
      canvasContext: made.context as never,
      viewport,
      background: '#ffffff',
      intent: 'print',
      annotationMode: 1,
    }).promise
    const { data } = made.context.getImageData(0, 0, width, height)
    const gray = new Uint8Array(width * height)
    // Luma of ITU-R BT.601, in whole numbers.
    for (let at = 0, from = 0; at < gray.length; at++, from += 4)
      gray[at] = (data[from]! * 77 + data[from + 1]! * 150 + data[from + 2]! * 29) >> 8
    return { data: gray, width, height }
  } finally {
    factory.destroy(made)
  }
}
