import type { DrawMessage } from '../draw-page.ts'
import { openPdf } from './open-pdf.ts'
import { say } from './say.ts'

/** What is needed of a canvas, whichever library makes it. */
type Made = { readonly canvas: { encode(type: 'png'): Promise<Buffer> }; readonly context: object }
type CanvasFactory = { create(width: number, height: number): Made }

/** Draws one page as a person is shown it, `widthPx` wide, and says it as PNG. */
async function draw([path, page, widthPx]: readonly string[]): Promise<DrawMessage> {
  const opened = await openPdf(path!)
  if (!opened.ok) return { type: 'refused', why: opened.why }
  const { pdf } = opened
  if (Number(page) > pdf.numPages) return { type: 'no-such-page' }
  const sheet = await pdf.getPage(Number(page))
  const viewport = sheet.getViewport({ scale: Number(widthPx) / sheet.getViewport({ scale: 1 }).width })
  const [width, height] = [Math.round(viewport.width), Math.max(1, Math.round(viewport.height))]
  const { canvas, context } = (pdf.canvasFactory as CanvasFactory).create(width, height)
  await sheet.render({ canvas: null, canvasContext: context as never, viewport, background: '#ffffff' })
    .promise
  return { type: 'drawn', width, height, png: (await canvas.encode('png')).toString('base64') }
}

say(await draw(process.argv.slice(2)))
process.exit(0)
