/**
 * Papers met for the first time: `node tests/bench/first-contact.bench.ts [seeds] [grades]`, seeds as `1001-1020`, grades
 * as `text,clean,fair,bad,fax`. Eight families of layouts that nothing was trained on or tuned to, each seed a page of its
 * own. Per grade and family: values, proposed, of those right, marked, of those wrong, permits found, with Wilson's
 * intervals at 95 %; then confusion by field, the worst pages, seconds a page.
 */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import type { PageWords } from '../../src/reading/page-words.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { readPicture } from '../../src/scan/child/read-picture.ts'
import { type Grade, scanned } from '../forms/damage.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { textPage } from '../forms/text-page.ts'
import { FAMILIES, type FamilyName, unseenPage } from '../forms/unseen/families.ts'
import { type Held, heldAgainst, interval, isMarked } from '../forms/unseen/held.ts'

const [range = '1001-1003', grades = 'text'] = process.argv.slice(2)
const [from = 1001, to = from] = range.split('-').map(Number)

type Page = {
  readonly family: FamilyName
  readonly grade: string
  readonly seed: number
  readonly held: readonly Held[]
  readonly found: number
  readonly permits: number
  readonly readMs: number
  readonly linkMs: number
}

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-first-'))

async function wordsOf(pdf: Buffer, grade: string, seed: number): Promise<PageWords> {
  if (grade === 'text') return textPage(pdf)
  const file = path.join(folder, 'page.pdf')
  await writeFile(file, await scanned(pdf, grade as Grade, seed))
  const opened = await openPdf(file)
  if (!opened.ok) throw new Error(opened.why)
  return readPicture(opened.pdf, await opened.pdf.getPage(1))
}

async function measured(family: FamilyName, grade: string, seed: number): Promise<Page> {
  const { pdf, papers } = await unseenPage(family, seed)
  const begun = performance.now()
  const words = await wordsOf(pdf, grade, seed)
  const read = performance.now()
  const page = await associated(words)
  const linked = performance.now()
  const { held, found } = heldAgainst(papers, proposePermits([page], QUILLBACK))
  process.stderr.write(`${grade} ${family} ${seed} ${((linked - begun) / 1000).toFixed(1)} s\n`)
  return {
    family,
    grade,
    seed,
    held,
    found,
    permits: papers.length,
    readMs: read - begun,
    linkMs: linked - read,
  }
}

const share = (part: number, whole: number): string => {
  if (whole === 0) return '-'
  const [low, high] = interval(part, whole)
  return `${((100 * part) / whole).toFixed(1)} % (${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)})`
}

function line(name: string, pages: readonly Page[]): void {
  const held = pages.flatMap((page) => page.held)
  const expected = held.filter((one) => one.expected !== null)
  const proposed = held.filter(({ field }) => field !== null)
  const marked = held.filter(isMarked)
  const sum = (pick: (page: Page) => number): number => pages.reduce((total, page) => total + pick(page), 0)
  const cells = [
    name,
    String(expected.length),
    share(expected.filter(({ field }) => field).length, expected.length),
    share(proposed.filter(({ right }) => right).length, proposed.length),
    String(held.length - expected.length),
    share(marked.filter(({ right }) => right).length, held.filter(({ right }) => right).length),
    `${marked.filter(({ right }) => !right).length} of ${marked.length}: ${share(marked.filter(({ right }) => !right).length, marked.length)}`,
    `${sum(({ found }) => found)} of ${sum(({ permits }) => permits)}`,
    (sum(({ readMs }) => readMs) / pages.length / 1000).toFixed(2),
    (sum(({ linkMs }) => linkMs) / pages.length).toFixed(0),
  ]
  process.stdout.write(`| ${cells.join(' | ')} |\n`)
}

const pages: Page[] = []
try {
  for (const grade of grades.split(','))
    for (let seed = from; seed <= to; seed++)
      for (const family of FAMILIES) pages.push(await measured(family, grade, seed))
} finally {
  await rm(folder, { recursive: true, force: true })
}
const head =
  'what | values | proposed | of those right | not on the paper | of the right ones marked | wrong among marked | permits found | s to read | ms to link'
process.stdout.write(`| ${head} |\n|${' --- |'.repeat(head.split('|').length)}\n`)
for (const grade of grades.split(',')) {
  const own = pages.filter((page) => page.grade === grade)
  for (const family of FAMILIES)
    line(
      `${family}, ${grade}`,
      own.filter((page) => page.family === family),
    )
  line(`**all, ${grade}**`, own)
}

process.stdout.write('\nConfusion by field (expected: missed, wrong; not on the paper)\n')
const fields = new Map<string, { all: number; missed: number; wrong: number; extra: number }>()
for (const { pointer, expected, field, right } of pages.flatMap(({ held }) => held)) {
  const name = pointer.replace(/^\/components\/[^/]+\//, '…/')
  const known = fields.get(name) ?? { all: 0, missed: 0, wrong: 0, extra: 0 }
  if (expected === null) known.extra += 1
  else {
    known.all += 1
    if (!field) known.missed += 1
    else if (!right) known.wrong += 1
  }
  fields.set(name, known)
}
const faults = (it: { missed: number; wrong: number; extra: number }): number =>
  it.missed + it.wrong + it.extra
for (const [name, it] of [...fields].sort((a, b) => faults(b[1]) - faults(a[1])).slice(0, 14))
  process.stdout.write(
    `${name}: ${it.all}, ${it.missed} missed, ${it.wrong} wrong, ${it.extra} not on the paper\n`,
  )

process.stdout.write('\nWorst pages\n')
const bad = ({ held }: Page): number => held.filter(({ right }) => !right).length
for (const page of [...pages].sort((a, b) => bad(b) - bad(a)).slice(0, 20)) {
  const told = page.held
    .filter(({ right }) => !right)
    .slice(0, 6)
    .map(
      ({ pointer, expected, field }) =>
        `${pointer} ${expected ?? 'nothing'} -> ${field ? `${field.value} ("${field.words}")` : 'nothing'}`,
    )
  process.stdout.write(
    `${page.grade} ${page.family} ${page.seed}: ${bad(page)} of ${page.held.length}; ${told.join('; ')}\n`,
  )
}
process.exit(0)
