import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { PageWords } from '../../src/reading/page-words.ts'
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { textLayerWords } from '../../src/scan/child/text-layer.ts'

/** The first page of a PDF of ours by its own text, in this process: starting the reading one costs more than the page. */
export async function textPage(bytes: Buffer): Promise<PageWords> {
  const folder = await mkdtemp(join(tmpdir(), 'asfound-text-'))
  try {
    const file = join(folder, 'page.pdf')
    await writeFile(file, bytes)
    const opened = await openPdf(file)
    if (!opened.ok) throw new Error(opened.why)
    const page = await opened.pdf.getPage(1)
    const { width, height } = page.getViewport({ scale: 1 })
    return {
      page: 1,
      widthPt: width,
      heightPt: height,
      turn: 0,
      levelDegrees: 0,
      readBy: 'text-layer',
      words: await textLayerWords(page),
      secondWords: null,
    }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
