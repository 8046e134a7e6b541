/** One file's text in this process: `bare` by the library alone, `pages` as our pages, `links` with what the model links. */
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { readPage } from '../../src/scan/child/read-page.ts'

const [way, file] = process.argv.slice(2)
// The model's own library is loaded only where it is asked for: it is not the bare library's.
const linked =
  way === 'links' ? (await import('../../src/scan/child/association/associate.ts')).associated : null
const opened = await openPdf(file!)
if (!opened.ok) throw new Error(opened.why)
const { pdf, hasImages, hasFields } = opened
for (let number = 1; number <= pdf.numPages; number++) {
  if (way === 'bare') {
    const page = await pdf.getPage(number)
    await page.getTextContent()
    page.cleanup()
    continue
  }
  const reading = await readPage(pdf, number, { hasImages, hasFields, pictures: 'read' })
  if (reading.state !== 'read') throw new Error(reading.says)
  await linked?.(reading.words)
}
process.exit(0)
