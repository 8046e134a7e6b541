/**
 * Reading paper: `node tests/bench/reading.bench.ts [seeds] [grades] [layouts]`, each a number or a list with commas
 * (`2 clean,fair,bad held-out`; `tuned`, `held-out`, `first-contact` or all). Per layout and grade: fields proposed, of those right, marked as read alike and of those
 * wrong, character errors, seconds a page; the same from the first reader alone on the picture as it is; how far
 * confidence is to be believed; and text PDFs a second against `pdftotext -bbox-layout`.
 */
import { spawnSync } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import type { PageWords } from '../../src/reading/page-words.ts'
import type { ProposedPermit } from '../../src/reading/proposal.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { readPicture } from '../../src/scan/child/read-picture.ts'
import { textLayerWords } from '../../src/scan/child/text-layer.ts'
import { readDocument } from '../../src/scan/read-document.ts'
import { type Compared, compare } from '../forms/compare.ts'
import { GRADES, type Grade, scanned } from '../forms/damage.ts'
import { FIRST_CONTACT, HELD_OUT, LAYOUTS, type LayoutName, makeForm, type Paper } from '../forms/make.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { readBare } from './bare-reader.ts'
import { characterErrors } from './character-errors.ts'

const [seeds = '1', grades = 'clean,fair', which = 'all'] = process.argv.slice(2)
const heldOut = Object.keys(HELD_OUT) as LayoutName[]
const tuned = Object.keys(LAYOUTS) as LayoutName[]
const firstContact = Object.keys(FIRST_CONTACT) as LayoutName[]
const SETS: Readonly<Record<string, readonly LayoutName[]>> = {
  tuned,
  'held-out': heldOut,
  'first-contact': firstContact,
}
const layouts = SETS[which] ?? [...tuned, ...heldOut, ...firstContact]

type Page = {
  readonly layout: LayoutName
  readonly grade: Grade
  readonly ours: readonly Compared[]
  readonly bare: readonly Compared[]
  readonly errors: number
  readonly seconds: number
  readonly bareSeconds: number
}

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-bench-'))
const opened = async (name: string, bytes: Buffer) => {
  const file = path.join(folder, name)
  await writeFile(file, bytes)
  const it = await openPdf(file)
  if (!it.ok) throw new Error(it.why)
  return it.pdf
}
const timed = async <T>(work: () => Promise<T>): Promise<[T, number]> => {
  const from = performance.now()
  return [await work(), (performance.now() - from) / 1000]
}
const held = (paper: Paper, words: PageWords): Compared[] =>
  compare(paper, proposePermits([words], QUILLBACK)[0])
/** The first reader alone knows no threshold: all that it gives counts. */
const heldBare = (paper: Paper, words: PageWords): Compared[] => {
  const [proposal] = proposePermits([words], QUILLBACK)
  return compare(paper, proposal && allOf(proposal))
}
const allOf = (it: ProposedPermit): ProposedPermit => ({
  ...it,
  fields: [...it.fields, ...it.unsure],
  address: it.address ?? it.unsure.find(({ pointer }) => pointer === '/address') ?? null,
})

async function measured(grade: Grade, seed: number): Promise<Page[]> {
  const form = await makeForm(layouts.map((layout) => ({ layout, seed: 5000 + seed })))
  const print = await opened('print.pdf', form.pdf)
  const scan = await opened('scan.pdf', await scanned(form.pdf, grade, 5000 + seed))
  const pages: Page[] = []
  for (const [index, layout] of layouts.entries()) {
    const page = await scan.getPage(index + 1)
    const [bare, bareSeconds] = await timed(() => readBare(scan, page).then(associated))
    const [ours, seconds] = await timed(() => readPicture(scan, page).then(associated))
    const truth = await textLayerWords(await print.getPage(index + 1))
    const paper = form.papers[index]!
    const errors = characterErrors({ ...ours, words: truth }, ours)
    pages.push({
      layout,
      grade,
      ours: held(paper, ours),
      bare: heldBare(paper, bare),
      errors,
      seconds,
      bareSeconds,
    })
    process.stderr.write(`${grade} ${layout} ${seconds.toFixed(1)} s\n`)
  }
  return pages
}

const share = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)} %`
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

function line(name: string, pages: readonly Page[]): void {
  const ours = pages.flatMap((page) => page.ours)
  const bare = pages.flatMap((page) => page.bare)
  const proposed = ours.filter((field) => field.proposed !== null)
  const marked = ours.filter(({ readAlike }) => readAlike === true)
  const cells = [
    name,
    String(ours.length),
    share(proposed.length, ours.length),
    share(proposed.filter(({ right }) => right).length, proposed.length),
    share(marked.length, ours.length),
    String(marked.filter(({ right }) => !right).length),
    share(bare.filter((field) => field.proposed !== null).length, bare.length),
    share(bare.filter(({ right }) => right).length, bare.filter((field) => field.proposed !== null).length),
    share(mean(pages.map(({ errors }) => errors)), 1),
    mean(pages.map(({ seconds }) => seconds)).toFixed(1),
    (mean(pages.map(({ seconds }) => seconds)) / mean(pages.map(({ bareSeconds }) => bareSeconds))).toFixed(
      2,
    ),
  ]
  process.stdout.write(`| ${cells.join(' | ')} |\n`)
}

const pages: Page[] = []
try {
  // Both readers are loaded before the clock runs.
  const warm = await opened(
    'warm.pdf',
    await scanned((await makeForm([{ layout: 'letter', seed: 1 }])).pdf, 'clean', 1),
  )
  await readPicture(warm, await warm.getPage(1))
  await readBare(warm, await warm.getPage(1))
  for (const grade of grades.split(',') as Grade[]) {
    if (!(grade in GRADES)) throw new Error(`no grade is named ${grade}: ${Object.keys(GRADES).join(', ')}`)
    for (let seed = 1; seed <= Number(seeds); seed++) pages.push(...(await measured(grade, seed)))
  }
  const head =
    'what | fields | proposed | of those right | marked | of those wrong | first reader alone: proposed | right | characters wrong | s a page | times bare'
  process.stdout.write(`| ${head} |\n|${' --- |'.repeat(head.split('|').length)}\n`)
  for (const grade of grades.split(',') as Grade[]) {
    const ofGrade = pages.filter((page) => page.grade === grade)
    for (const layout of layouts)
      line(
        `${layout}, ${grade}`,
        ofGrade.filter((page) => page.layout === layout),
      )
    const some = (names: readonly LayoutName[]) => ofGrade.filter(({ layout }) => names.includes(layout))
    for (const [name, names] of Object.entries(SETS))
      if (which === name || !(which in SETS)) line(`**${name}, ${grade}**`, some(names))
  }
  reliability(pages.flatMap(({ ours }) => ours).filter(({ proposed }) => proposed !== null))
  await textThroughput()
} finally {
  await rm(folder, { recursive: true, force: true })
}
process.exit(0)

function reliability(fields: readonly Compared[]): void {
  process.stdout.write('\n| confidence | fields | mean confidence | right |\n| --- | --- | --- | --- |\n')
  const bounds = [0, 0.5, 0.7, 0.8, 0.9, 0.95, 0.97, 0.99, 1.001]
  for (const alike of [false, true])
    bounds.slice(1).forEach((to, index) => {
      const from = bounds[index]!
      const within = fields.filter(
        ({ confidence, readAlike }) =>
          (readAlike === true) === alike && confidence >= from && confidence < to,
      )
      if (within.length === 0) return
      const told = share(mean(within.map(({ confidence }) => confidence)), 1)
      const right = share(within.filter((field) => field.right).length, within.length)
      process.stdout.write(
        `| ${alike ? 'marked' : 'not marked'}, ${from} to ${Math.min(1, to)} | ${within.length} | ${told} | ${right} |\n`,
      )
    })
}

async function textThroughput(): Promise<void> {
  const many = Array.from({ length: 220 }, (_, at) => ({
    layout: [...tuned, ...heldOut][at % 11]!,
    seed: at,
  }))
  const { pdf } = await makeForm(many)
  const file = path.join(folder, 'text.pdf')
  await writeFile(file, pdf)
  const rounds = 3
  const [ours, theirs]: [number[], number[]] = [[], []]
  for (let round = 0; round < rounds; round++) {
    ours.push((await timed(() => readDocument(file)))[1])
    const from = performance.now()
    const run = spawnSync('pdftotext', ['-bbox-layout', file, path.join(folder, 'text.html')])
    if (run.error)
      return void process.stdout.write('\ntext PDFs: pdftotext is not installed here, not compared\n')
    theirs.push((performance.now() - from) / 1000)
  }
  const best = (all: readonly number[]): number => many.length / Math.min(...all)
  process.stdout.write(
    `\ntext PDFs: ${best(ours).toFixed(0)} pages a second, process and all; pdftotext -bbox-layout ${best(theirs).toFixed(0)}\n`,
  )
}
