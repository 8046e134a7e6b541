/**
 * What confirmed papers teach: `node tests/bench/taught-contact.bench.ts [seeds] [grades] [folder]`, seeds as `401-403` of
 * those that are read, grades as `text,clean,fair,bad,fax`. Each family met for the first time is read as it is, and after
 * one and three confirmed papers of it (fair scans; text where text is read), of the seeds before those read. Words that
 * were read are kept in the folder, so that what is made of them can be looked at again without reading them anew.
 */
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { learnForm } from '../../src/reading/family/learn.ts'
import type { NamedForm } from '../../src/reading/family/taught-form.ts'
import type { PageWords } from '../../src/reading/page-words.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { readPicture } from '../../src/scan/child/read-picture.ts'
import { type Grade, scanned } from '../forms/damage.ts'
import type { Paper } from '../forms/make.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { textPage } from '../forms/text-page.ts'
import { lessonsOf } from '../forms/unseen/confirmed.ts'
import { FAMILIES, type FamilyName, unseenPage } from '../forms/unseen/families.ts'
import { type Held, heldAgainst, interval, isMarked } from '../forms/unseen/held.ts'

const [range = '401-403', grades = 'text', kept] = process.argv.slice(2)
const [from = 401, to = from] = range.split('-').map(Number)
const TEACHERS = [0, 1, 3]
const scratch = await mkdtemp(path.join(os.tmpdir(), 'asfound-taught-'))
const folder = kept ?? scratch
await mkdir(folder, { recursive: true })

type Read = { readonly papers: readonly Paper[]; readonly page: PageWords }

async function read(family: FamilyName, grade: string, seed: number): Promise<Read> {
  const { pdf, papers } = await unseenPage(family, seed)
  const known = path.join(folder, `${family}-${grade}-${seed}.json`)
  const words = await readFile(known, 'utf8').then(
    (text) => JSON.parse(text) as PageWords,
    () => undefined,
  )
  if (words) return { papers, page: words }
  const page = await associated(grade === 'text' ? await textPage(pdf) : await pictureOf(pdf, grade, seed))
  await writeFile(known, JSON.stringify(page))
  process.stderr.write(`${grade} ${family} ${seed}\n`)
  return { papers, page }
}

async function pictureOf(pdf: Buffer, grade: string, seed: number): Promise<PageWords> {
  const file = path.join(scratch, 'page.pdf')
  await writeFile(file, await scanned(pdf, grade as Grade, seed))
  const opened = await openPdf(file)
  if (!opened.ok) throw new Error(opened.why)
  return readPicture(opened.pdf, await opened.pdf.getPage(1))
}

const share = (part: number, whole: number): string => {
  if (whole === 0) return '-'
  const [low, high] = interval(part, whole)
  return `${((100 * part) / whole).toFixed(1)} % (${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)})`
}

type Told = {
  readonly held: readonly Held[]
  readonly found: number
  readonly permits: number
  readonly known: boolean
}

function line(name: string, told: readonly Told[], before: readonly Told[]): void {
  const held = told.flatMap((page) => page.held)
  const expected = held.filter((one) => one.expected !== null)
  const proposed = held.filter(({ field }) => field !== null)
  const right = held.filter((one) => one.right)
  const marked = held.filter(isMarked)
  const sum = (pick: (page: Told) => number): number => told.reduce((total, page) => total + pick(page), 0)
  const lost = before.flatMap((page, nth) =>
    page.held.filter((one) => one.right && !isRight(one, told[nth]!)),
  )
  const cells = [
    name,
    String(expected.length),
    `${told.filter(({ known }) => known).length} of ${told.length}`,
    share(expected.filter(({ field }) => field).length, expected.length),
    share(right.length, proposed.length),
    share(marked.filter((one) => one.right).length, right.length),
    `${marked.filter((one) => !one.right).length} of ${marked.length}`,
    `${sum(({ found }) => found)} of ${sum(({ permits }) => permits)}`,
    String(lost.length),
  ]
  process.stdout.write(`| ${cells.join(' | ')} |\n`)
  for (const one of lost)
    process.stderr.write(`lost, ${name}: ${one.pointer} ${String(one.expected)} ("${one.field?.words}")\n`)
}

const isRight = (one: Held, { held }: Told): boolean =>
  held.some(({ pointer, expected, right }) => right && pointer === one.pointer && expected === one.expected)

const tell = ({ papers, page }: Read, forms: readonly NamedForm[]): Told => {
  const proposals = proposePermits([page], QUILLBACK, forms)
  const known = proposals.some(({ family }) => family !== null)
  return { ...heldAgainst(papers, proposals), permits: papers.length, known }
}

try {
  const head =
    'what | values | known as it | proposed | of those right | of the right ones marked | wrong among marked | permits found | right ones lost'
  process.stdout.write(`| ${head} |\n|${' --- |'.repeat(head.split('|').length)}\n`)
  for (const grade of grades.split(',')) {
    const all = new Map<number, Told[]>(TEACHERS.map((count) => [count, []]))
    for (const family of FAMILIES) {
      const lessons = []
      for (let nth = 1; nth <= Math.max(...TEACHERS); nth++) {
        const { papers, page } = await read(family, grade === 'text' ? 'text' : 'fair', from - nth)
        lessons.push(lessonsOf(papers, page, proposePermits([page], QUILLBACK)))
      }
      const pages: Read[] = []
      for (let seed = from; seed <= to; seed++) pages.push(await read(family, grade, seed))
      const before = pages.map((page) => tell(page, []))
      for (const count of TEACHERS) {
        const form = learnForm(lessons.slice(0, count).flat(), { format: QUILLBACK, misread: false })
        const told = pages.map((page) => tell(page, form ? [{ name: family, form }] : []))
        line(`${family}, ${grade}, ${count} taught`, told, before)
        all.get(count)!.push(...told)
      }
    }
    for (const [count, told] of all) line(`**all, ${grade}, ${count} taught**`, told, all.get(0)!)
  }
} finally {
  await rm(scratch, { recursive: true, force: true })
}
process.exit(0)
