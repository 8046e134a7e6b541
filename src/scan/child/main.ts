import type { PDFDocumentProxy } from 'pdfjs-dist'
import type { PageReading } from '../outcome.ts'
import { listenForDropped } from './left-out.ts'
import { openPdf } from './open-pdf.ts'
import { type PageOptions, readPage } from './read-page.ts'
import { say } from './say.ts'

async function main([path, from, to, maxPages, pictures]: readonly string[]): Promise<void> {
  listenForDropped()
  const opened = await openPdf(path!, 1)
  if (!opened.ok) return say({ type: 'refused', why: opened.why })
  const { pdf, notes, hasImages, hasFields } = opened
  const options: PageOptions = { hasImages, hasFields, pictures: pictures === 'leave' ? 'leave' : 'read' }
  if (pdf.numPages === 0) return say({ type: 'refused', why: 'no-pages' })
  say({ type: 'opened', pageCount: pdf.numPages, notes })
  if (pdf.numPages > Number(maxPages)) return
  const last = Math.min(pdf.numPages, Number(to) || pdf.numPages)
  for (let page = Number(from); page <= last; page++) {
    say({ type: 'begin', page })
    say({ type: 'done', reading: await readOrSay(pdf, page, options) })
  }
}

/** The words with what they are and which belong together. The model is loaded with the first page that has words. */
async function linked(reading: PageReading): Promise<PageReading> {
  if (reading.state === 'unread') return reading
  const { associated } = await import('./association/associate.ts')
  return { ...reading, words: await associated(reading.words) }
}

async function readOrSay(pdf: PDFDocumentProxy, page: number, options: PageOptions): Promise<PageReading> {
  try {
    return await linked(await readPage(pdf, page, options))
  } catch (error) {
    // A heap that is used up ends the process; what comes here is one page's own fault.
    if (error instanceof RangeError && /allocation|Invalid array length/i.test(error.message)) throw error
    return {
      state: 'unread',
      page,
      why: 'damaged',
      says: 'This page is damaged in the file and could not be read. Type what it says, or scan the document again.',
      mayRetry: false,
    }
  }
}

await main(process.argv.slice(2))
process.exit(0)
