/**
 * Taught forms: `node tests/bench/forms.bench.ts [teachers] [seeds] [grades]` (`4 2 fair,bad,fax`). Each layout that the
 * reading was not tuned on is taught by so many fair scans; then others of it are read without the form and with it.
 */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { learnForm } from '../../src/reading/family/learn.ts'
import type { NamedForm } from '../../src/reading/family/taught-form.ts'
import type { PageWords } from '../../src/reading/page-words.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { readPicture } from '../../src/scan/child/read-picture.ts'
import { type Compared, compare } from '../forms/compare.ts'
import { GRADES, type Grade, scanned } from '../forms/damage.ts'
import { lessonOf } from '../forms/lesson.ts'
import { FIRST_CONTACT, HELD_OUT, type LayoutName, makeForm, type Paper } from '../forms/make.ts'
import { QUILLBACK } from '../forms/quillback.ts'

const [teachers = '4', seeds = '2', grades = 'fair,bad,fax'] = process.argv.slice(2)
const layouts = [...Object.keys(HELD_OUT), ...Object.keys(FIRST_CONTACT)] as LayoutName[]
const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-forms-'))

type Read = { readonly paper: Paper; readonly page: PageWords }

async function read(layout: LayoutName, grade: Grade, seed: number): Promise<Read> {
  const form = await makeForm([{ layout, seed }])
  const file = path.join(folder, 'scan.pdf')
  await writeFile(file, await scanned(form.pdf, grade, seed))
  const opened = await openPdf(file)
  if (!opened.ok) throw new Error(opened.why)
  const page = await associated(await readPicture(opened.pdf, await opened.pdf.getPage(1)))
  process.stderr.write(`${grade} ${layout} ${seed}\n`)
  return { paper: form.papers[0]!, page }
}

const share = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)} %`

function line(name: string, fields: readonly Compared[], known: string): void {
  const proposed = fields.filter((field) => field.proposed !== null)
  const marked = fields.filter(({ readAlike }) => readAlike === true)
  const cells = [
    name,
    String(fields.length),
    known,
    share(proposed.length, fields.length),
    share(proposed.filter(({ right }) => right).length, proposed.length),
    share(marked.length, fields.length),
    String(marked.filter(({ right }) => !right).length),
  ]
  process.stdout.write(`| ${cells.join(' | ')} |\n`)
}

try {
  const forms: NamedForm[] = []
  for (const layout of layouts) {
    const lessons = []
    for (let seed = 1; seed <= Number(teachers); seed++) {
      const { paper, page } = await read(layout, 'fair', 6000 + seed)
      lessons.push(lessonOf(paper, page))
    }
    const form = learnForm(lessons, { format: QUILLBACK, misread: false })
    const told = form
      ? form.sheets.map(({ marks, fields }) => `${marks.length} marks, ${fields.length} fields`)
      : ['nothing']
    process.stdout.write(`${layout}: ${told.join('; ')}\n`)
    if (form) forms.push({ name: layout, form })
  }
  process.stdout.write(
    '\n| what | fields | known as it | proposed | of those right | marked | of those wrong |\n| --- | --- | --- | --- | --- | --- | --- |\n',
  )
  for (const grade of grades.split(',') as Grade[]) {
    if (!(grade in GRADES)) throw new Error(`no grade is named ${grade}: ${Object.keys(GRADES).join(', ')}`)
    const [before, after]: [Compared[], Compared[]] = [[], []]
    let [pages, known] = [0, 0]
    for (const layout of layouts)
      for (let seed = 1; seed <= Number(seeds); seed++) {
        const { paper, page } = await read(layout, grade, 6500 + seed)
        before.push(...compare(paper, proposePermits([page], QUILLBACK)[0]))
        const [proposal] = proposePermits([page], QUILLBACK, forms)
        after.push(...compare(paper, proposal))
        pages += 1
        if (proposal?.family === layout) known += 1
        else if (proposal?.family) process.stdout.write(`${layout} taken for ${proposal.family}\n`)
      }
    line(`${grade}, by labels`, before, '-')
    line(`${grade}, by labels and form`, after, `${known} of ${pages}`)
  }
} finally {
  await rm(folder, { recursive: true, force: true })
}
process.exit(0)
