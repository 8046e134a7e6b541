import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { createWorker, OEM, PSM, type Worker } from 'tesseract.js'
import type { Word } from '../../../reading/page-words.ts'
import type { Picture } from '../image/picture.ts'

const fromHere = createRequire(import.meta.url)
const language = join(dirname(fromHere.resolve('@tesseract.js-data/eng')), '4.0.0_best_int')

/** Tesseract with its English data, from the packages that carry them: nothing is fetched, nothing is cached. */
export const startWordReader = async (): Promise<Worker> => {
  const worker = await createWorker('eng', OEM.LSTM_ONLY, {
    langPath: language,
    gzip: true,
    cacheMethod: 'none',
  })
  await worker.setParameters({
    tessedit_pageseg_mode: PSM.SPARSE_TEXT,
    user_defined_dpi: '300',
    preserve_interword_spaces: '1',
  })
  return worker
}

/** The words that Tesseract sees on a level page. */
export async function readWords(worker: Worker, page: Picture): Promise<Word[]> {
  const { data } = await worker.recognize(portableGraymap(page), {}, { blocks: true, text: false })
  return (data.blocks ?? [])
    .flatMap(({ paragraphs }) => paragraphs)
    .flatMap(({ lines }) => lines)
    .flatMap(({ words }) => words)
    .filter(({ text }) => text.trim() !== '')
    .map(({ text, confidence, bbox }) => ({
      text: text.trim(),
      confidence: Math.max(0, confidence) / 100,
      box: {
        x: bbox.x0 / page.width,
        y: bbox.y0 / page.height,
        w: (bbox.x1 - bbox.x0) / page.width,
        h: (bbox.y1 - bbox.y0) / page.height,
      },
    }))
}

/** The plainest of picture formats: a line of sizes, then the points. */
const portableGraymap = ({ data, width, height }: Picture): Buffer =>
  Buffer.concat([Buffer.from(`P5\n${width} ${height}\n255\n`), data])
