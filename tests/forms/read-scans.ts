/**
 * Scans of held-out forms as the two readers read them, kept so that what is made of the words can be tested without
 * reading them each time. `node tests/forms/read-scans.ts` reads them anew, in some minutes.
 */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { PageWords, Word } from '../../src/reading/page-words.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { readPicture } from '../../src/scan/child/read-picture.ts'
import { type Grade, scanned } from './damage.ts'
import { type LayoutName, makeForm, type Paper } from './make.ts'

const FILE = new URL('./samples/read-scans.json', import.meta.url)
const KEPT: readonly {
  readonly layout: LayoutName
  readonly grade: Grade
  readonly seeds: readonly number[]
}[] = (['sheet-1972', 'form-2009'] as const).flatMap((layout) => [
  { layout, grade: 'fair' as const, seeds: [7001, 7002, 7003, 7004, 7005, 7006] },
  { layout, grade: 'bad' as const, seeds: [7001, 7005, 7006] },
  { layout, grade: 'fax' as const, seeds: [7005, 7006] },
])

export type ReadScan = {
  readonly layout: LayoutName
  readonly grade: Grade
  readonly seed: number
  readonly paper: Paper
  readonly page: PageWords
}

type Packed = [text: string, x: number, y: number, w: number, h: number, confidence: number]
type Kept = Omit<ReadScan, 'paper' | 'page'> & {
  readonly page: Omit<PageWords, 'words' | 'secondWords'> & {
    readonly words: readonly Packed[]
    readonly secondWords: readonly Packed[] | null
  }
}

const rounded = (value: number): number => Number(value.toFixed(4))
const packed = ({ text, box: { x, y, w, h }, confidence }: Word): Packed => [
  text,
  ...([x, y, w, h, confidence].map(rounded) as [number, number, number, number, number]),
]
const unpacked = ([text, x, y, w, h, confidence]: Packed): Word => ({ text, box: { x, y, w, h }, confidence })

/** The scans as they were read, each with the paper that it is of. */
export async function readScans(): Promise<readonly ReadScan[]> {
  const kept = JSON.parse(await readFile(FILE, 'utf8')) as Kept[]
  return Promise.all(
    kept.map(async ({ layout, grade, seed, page }): Promise<ReadScan> => {
      const { papers } = await makeForm([{ layout, seed }])
      const words = page.words.map(unpacked)
      return {
        layout,
        grade,
        seed,
        paper: papers[0]!,
        page: await associated({ ...page, words, secondWords: page.secondWords?.map(unpacked) ?? null }),
      }
    }),
  )
}

async function readAgain(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'asfound-scans-'))
  const kept: Kept[] = []
  try {
    for (const { layout, grade, seeds } of KEPT)
      for (const seed of seeds) {
        const file = join(folder, 'scan.pdf')
        await writeFile(file, await scanned((await makeForm([{ layout, seed }])).pdf, grade, seed))
        const opened = await openPdf(file)
        if (!opened.ok) throw new Error(opened.why)
        const page = await readPicture(opened.pdf, await opened.pdf.getPage(1))
        kept.push({
          layout,
          grade,
          seed,
          page: {
            ...page,
            words: page.words.map(packed),
            secondWords: page.secondWords?.map(packed) ?? null,
          },
        })
        process.stderr.write(`${layout} ${grade} ${seed}\n`)
      }
    await writeFile(FILE, `[\n${kept.map((it) => JSON.stringify(it)).join(',\n')}\n]\n`)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

if (import.meta.main) {
  await readAgain()
  process.exit(0)
}
