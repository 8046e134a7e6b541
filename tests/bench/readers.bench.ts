/**
 * What the first reader of pictures makes of texts cut out at their true places, and a trained recognizer beside it where
 * one is given: `node tests/bench/readers.bench.ts [first seed] [seeds] [grades] [faces] [recognizer.onnx]
 * [misses]`, the last to list each text that the candidate missed. Leaders (three dots or more) are no text. Signs right
 * (1 less the Levenshtein distance over their number) and texts right as a whole, spaces left out, by grade and face; how
 * often both say the same and are wrong; milliseconds a text. Shares with their 95 % interval (Wilson 1927). The faces
 * filled in with are none that the recognizer is trained on, and the damage is done by other code.
 */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import type { Picture } from '../../src/scan/child/image/picture.ts'
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { pagePicture } from '../../src/scan/child/page-picture.ts'
import { type LineReader, readStrips } from '../../src/scan/child/readers/read-strips.ts'
import { readers } from '../../src/scan/child/readers/readers.ts'
import { stripsOf } from '../../src/scan/child/readers/strip.ts'
import { type Grade, scanned } from '../forms/damage.ts'
import { FIRST_CONTACT, HELD_OUT, type LayoutName, makeForm } from '../forms/make.ts'
import { type PrintedLine, printedLines } from '../forms/printed-lines.ts'
import type { Face } from '../forms/sheet.ts'
import { candidateReader } from './candidate-reader.ts'
import { distance } from './distance.ts'
import { withInterval } from './interval.ts'

const [
  first = '9001',
  count = '1',
  grades = 'light,fair,bad,fax',
  faces = 'own,Typewriter,Dot matrix,Printed hand,Running hand',
  candidate,
  misses,
] = process.argv.slice(2)
const layouts = Object.keys({ ...HELD_OUT, ...FIRST_CONTACT }) as LayoutName[]

type Case = {
  readonly grade: string
  readonly face: string
  readonly truth: string
  readonly says: readonly string[]
}

const plain = (text: string): string =>
  text
    .replace(/\s/g, '')
    .replace(/[._…]{3,}/g, '')
    .replace(/[“”″]/g, '"')
    .replace(/[‘’′]/g, "'")
    .replace(/[–—]/g, '-')

async function saidBy(
  reader: LineReader,
  picture: Picture,
  lines: readonly PrintedLine[],
): Promise<string[]> {
  const said: string[] = []
  for (const { box } of lines) {
    const [read] = await readStrips(reader, await stripsOf(picture, [{ ...box, score: 1 }]))
    said.push(plain(read?.signs.map(({ sign }) => sign).join('') ?? ''))
  }
  return said
}

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-readers-'))
const opened = async (name: string, bytes: Buffer) => {
  const file = path.join(folder, name)
  await writeFile(file, bytes)
  const it = await openPdf(file)
  if (!it.ok) throw new Error(it.why)
  return it.pdf
}

const { general } = await readers()
const compared = candidate ? [general, await candidateReader(candidate)] : [general]
const spent = compared.map(() => 0)
const cases: Case[] = []
try {
  for (let seed = Number(first); seed < Number(first) + Number(count); seed++)
    for (const [at, face] of faces.split(',').entries())
      for (const [nth, grade] of (grades.split(',') as Grade[]).entries()) {
        const layout = layouts[(seed + at * 4 + nth) % layouts.length]!
        const form = await makeForm([{ layout, seed, ...(face === 'own' ? {} : { face: face as Face }) }])
        const print = await opened('print.pdf', form.pdf)
        const scan = await opened('scan.pdf', await scanned(form.pdf, grade, seed))
        const shown = await pagePicture(scan, await scan.getPage(1), 300, 2.4e7)
        const {
          picture,
          scanned: asScanned,
          lines,
        } = await printedLines(await print.getPage(1), shown, { grade, seed, page: 1 })
        const values = lines.filter(({ text }) => /[A-Za-z0-9]/.test(text))
        const says: string[][] = []
        for (const [which, reader] of compared.entries()) {
          const from = performance.now()
          // Each from the picture that it reads in service: the general one cleaned, our own as scanned.
          says.push(await saidBy(reader, which === 0 ? picture : asScanned, values))
          spent[which]! += performance.now() - from
        }
        values.forEach(({ text }, line) => {
          cases.push({ grade, face, truth: plain(text), says: says.map((texts) => texts[line]!) })
        })
        process.stderr.write(`${seed} ${face} ${grade} ${layout}\n`)
      }
} finally {
  await rm(folder, { recursive: true, force: true })
}

function line(name: string, of: readonly Case[]): void {
  if (of.length === 0) return
  const signs = of.reduce((sum, { truth }) => sum + truth.length, 0)
  const cells = compared.flatMap((_, reader) => [
    `${(100 * (1 - of.reduce((sum, { truth, says }) => sum + Math.min(truth.length, distance(truth, says[reader]!)), 0) / signs)).toFixed(1)}`,
    withInterval(of.filter(({ truth, says }) => truth === says[reader]).length, of.length),
  ])
  if (candidate) {
    const alike = of.filter(({ says }) => says[0] === says[1])
    const wrong = alike.filter(({ truth, says }) => truth !== says[0]).length
    cells.push(withInterval(alike.length, of.length), withInterval(wrong, alike.length))
  }
  process.stdout.write(`| ${[name, of.length, ...cells].join(' | ')} |\n`)
}

const head = [
  'texts | number | in use: signs | whole',
  ...(candidate ? ['candidate: signs | whole | both alike | of those wrong'] : []),
].join(' | ')
process.stdout.write(`| ${head} |\n|${' --- |'.repeat(head.split('|').length)}\n`)
const values = cases.filter(({ truth }) => /\d/.test(truth))
line('all', cases)
line('values (with a figure)', values)
for (const grade of grades.split(','))
  line(
    `values, ${grade}`,
    values.filter((it) => it.grade === grade),
  )
for (const face of faces.split(','))
  line(
    `values, ${face}`,
    values.filter((it) => it.face === face),
  )
line(
  'printed labels, light and fair',
  cases.filter((it) => !/\d/.test(it.truth) && ['light', 'fair'].includes(it.grade)),
)
if (misses)
  for (const { grade, face, truth, says } of cases)
    if (truth !== says[1]) process.stdout.write(`${[grade, face, truth, ...says].join('\t')}\n`)
process.stdout.write(
  `\n${spent.map((ms) => (ms / cases.length).toFixed(1)).join(' and ')} ms a text, the cutting in it\n`,
)
process.exit(0)
